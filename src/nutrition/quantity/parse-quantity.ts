import { Fraction } from 'fraction.js';
import { Problem } from '../problem.ts';
import { MULTIPLE_WORDS, PART_WORDS, VULGAR_FRACTIONS, WHOLE_WORDS } from './number-words.ts';
import { type ExactAmount, MOST_AMOUNT, type Quantity } from './quantity.ts';

const LONGEST_TEXT = 60;
const HINT = 'Write a number such as 12, 1 1/2, 1.5 or 2-3.';
const ABOUT = /^(?:about|around|approx\.?|roughly|~)\s*/;
const RANGE = /^(.*[\p{L}\d])\s*(?:-|\bto\b|\bor\b)\s*([\p{L}\d.].*)$/u;
/** US recipes write the mixed number 1 1/2 as "1-1/2"; "2-3/4" therefore is not a range either. */
const HYPHENATED_MIXED = /^(\d+)-(\d+\/\d+)$/;

/**
 * Reads an amount exactly: "1 1/2", "1½", "1-1/2", ".5", "1,000", "2-3", "a dozen", "half", "two and a half".
 * @throws Problem `bad_quantity` that says what to write instead; never anything else.
 * @example parseQuantity('1 1/2').exact // { numerator: 3, denominator: 2 }
 */
export function parseQuantity(text: string): Quantity {
  if (text.length > LONGEST_TEXT) throw bad('That amount is too long to read.');
  const plain = normalize(text);
  if (plain === '') throw bad('An amount is missing.');
  refuseWhatIsNoAmount(plain, text.trim());
  const words = plain.replace(ABOUT, '');
  const mixed = HYPHENATED_MIXED.exec(words);
  const range = mixed ? null : RANGE.exec(words);
  const least = readOne(mixed ? `${mixed[1]} ${mixed[2]}` : (range?.[1] ?? words), text);
  const approximate = words !== plain || /\bcouple\b/.test(words);
  if (!range?.[2]) return { exact: toExact(least), amount: least.valueOf(), approximate };
  const most = readOne(range[2], text);
  if (most.lt(least)) throw bad(`"${text.trim()}" runs from more to less.`);
  return {
    exact: toExact(least),
    amount: least.valueOf(),
    most: { exact: toExact(most), amount: most.valueOf() },
    approximate,
  };
}

/** "three quarters", "two thirds", "one half". */
const COUNTED_PARTS =
  /\b(one|two|three|five|seven|\d)[ -](half|halves|thirds?|quarters?|fourths?|eighths?)\b/g;

/** The ratio as a number: 3/2 is 1.5. */
export const toNumber = (exact: ExactAmount): number => exact.numerator / exact.denominator;

function normalize(text: string): string {
  return text
    .replace(/[½⅓⅔¼¾⅕-⅞]/g, (sign) => ` ${VULGAR_FRACTIONS.get(sign) ?? sign}`)
    .replace(/\u2044/g, '/')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/(\d),(?=\d{3}(?!\d))/g, '$1')
    .replace(/\s+/g, ' ')
    .replace(/ ?\/ ?/g, '/')
    .trim()
    .toLowerCase()
    .replace(COUNTED_PARTS, (_, count, part) => `${WHOLE_WORDS.get(count) ?? count}/${PART_WORDS.get(part)}`)
    .replace(/\b(twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)-(?=[a-z])/g, '$1 ');
}

function refuseWhatIsNoAmount(plain: string, said: string): void {
  if (/^-/.test(plain)) throw bad(`"${said}" is less than nothing.`);
  if (/^[+]?\d[\d.]*e[+-]?\d+$/.test(plain)) throw bad(`"${said}" is not how a kitchen writes an amount.`);
  if (/^(nan|[+]?inf(inity)?|null|undefined)$/.test(plain)) throw bad(`"${said}" is not an amount.`);
}

function readOne(words: string, text: string): Fraction {
  const value = readTokens(words.split(' ').filter(Boolean), text);
  if (value.valueOf() > MOST_AMOUNT) {
    throw bad(
      `"${text.trim()}" is more than this kitchen can count (${MOST_AMOUNT.toLocaleString('en-US')}).`,
    );
  }
  return value;
}

/** Adds up the words: whole, then fraction or part, multiplied by "dozen" and its like. */
function readTokens(tokens: readonly string[], text: string): Fraction {
  let total = new Fraction(0);
  let seen = false;
  let joined = true;
  for (const [index, token] of tokens.entries()) {
    if (FILLER.has(token)) {
      joined = true;
      continue;
    }
    const multiple = MULTIPLE_WORDS.get(token);
    const part = PART_WORDS.get(token);
    if (multiple !== undefined) total = (seen ? total : new Fraction(1)).mul(multiple);
    else if (part !== undefined) total = addPart(total, part, tokens, index, seen);
    else total = addNumber(total, token, joined || total.valueOf() >= 20, seen, text);
    seen = true;
    joined = false;
  }
  if (!seen) {
    if (tokens.some((token) => token === 'a' || token === 'an')) return new Fraction(1);
    throw bad(`"${text.trim()}" is not an amount I can read.`);
  }
  return total;
}

const FILLER = new Set(['a', 'an', 'and', 'of']);

/** "half" stands alone, "two and a half" adds, "a dozen and a half" adds half a dozen. */
function addPart(
  total: Fraction,
  part: number,
  tokens: readonly string[],
  index: number,
  seen: boolean,
): Fraction {
  if (!seen) return new Fraction(1, part);
  if (!FILLER.has(tokens[index - 1] ?? '')) throw bad(`"${tokens.join(' ')}" holds two amounts.`);
  const counted = MULTIPLE_WORDS.get(tokens[index - 3] ?? '') ?? 1;
  return total.add(new Fraction(counted, part));
}

function addNumber(total: Fraction, token: string, mayAdd: boolean, seen: boolean, text: string): Fraction {
  const isFraction = token.includes('/');
  const value = readNumber(token, text);
  if (seen && !isFraction && !mayAdd) throw bad(`"${text.trim()}" holds two amounts.`);
  if (seen && isFraction && (value.gte(1) || total.d !== 1n)) {
    throw bad(`"${text.trim()}" holds two amounts.`);
  }
  return total.add(value);
}

function readNumber(token: string, text: string): Fraction {
  const word = WHOLE_WORDS.get(token);
  if (word !== undefined) return new Fraction(word);
  const ratio = /^(\d{1,9})\/(\d{1,9})$/.exec(token);
  if (ratio) {
    if (Number(ratio[2]) === 0) throw bad(`"${text.trim()}" divides by zero.`);
    return new Fraction(Number(ratio[1]), Number(ratio[2]));
  }
  if (!/^(?:\d{1,12}(?:\.\d{0,12})?|\.\d{1,12})$/.test(token)) {
    throw bad(`"${text.trim()}" is not an amount I can read.`);
  }
  // Six decimals are far below any kitchen scale and keep the ratio within safe integers.
  return new Fraction(Math.round(Number(token) * 1e6), 1_000_000);
}

const toExact = (value: Fraction): ExactAmount => ({
  numerator: Number(value.n),
  denominator: Number(value.d),
});

const bad = (message: string): Problem => new Problem('bad_quantity', message, HINT);
