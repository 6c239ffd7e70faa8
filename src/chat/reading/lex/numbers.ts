import { MULTIPLES, NUMBER_WORDS, PARTS } from '../vocabulary/numbers.ts';
import { type Line, phraseAt, wordAt } from './cursor.ts';

/** A number as said: `value` is missing for what is no number, "1/0". */
export interface Count {
  readonly value: number | undefined;
  readonly most?: number;
  readonly next: number;
}

/** What a spreadsheet or a script puts where a number should be. */
const NO_NUMBER = /^(?:nan|infinity)$/;
const KITCHEN_PARTS = new Set([2, 3, 4, 5, 6, 8, 16]);

/** A number, fraction, mixed number, range or number in words that starts at this token. */
export function countAt(line: Line, i: number): Count | undefined {
  const first = oneCountAt(line, i);
  if (!first || first.value === undefined) return first;
  const second = wordAt(line, i - 1) === 'between' ? betweenEnd(line, first) : rangeEnd(line, first);
  if (second?.value === undefined || second.value <= first.value) return first;
  return { value: first.value, most: second.value, next: second.next };
}

function oneCountAt(line: Line, i: number): Count | undefined {
  const token = line.tokens[i];
  if (!token) return undefined;
  if (token.kind === 'number') {
    const digits = digitsAt(line, i);
    const parts = digits?.value === undefined ? undefined : partsAfter(line, digits.value, digits.next);
    return parts ?? times(line, withPart(line, digits));
  }
  if (token.kind === 'sign') return negativeAt(line, i);
  if (token.kind !== 'word') return undefined;
  if (NO_NUMBER.test(token.typed)) return { value: undefined, next: i + 1 };
  return times(line, withPart(line, wordsAt(line, i)));
}

/** "two and a half", "1 and a half", "one and 1/2": a whole number with a part said after it. */
function withPart(line: Line, count: Count | undefined): Count | undefined {
  if (count?.value === undefined || !Number.isInteger(count.value) || count.value > 99) return count;
  if (wordAt(line, count.next) !== 'and' || MULTIPLES.has(wordAt(line, count.next - 1))) return count;
  const mixedPart = mixed(line, count.value, count.next);
  if (mixedPart) return mixedPart;
  const at = wordAt(line, count.next + 1) === 'a' ? count.next + 2 : count.next + 1;
  const part = PARTS.get(wordAt(line, at));
  return part === undefined || wordAt(line, at + 1) === 'a'
    ? count
    : { value: count.value + part, next: at + 1 };
}

function digitsAt(line: Line, i: number): Count | undefined {
  const text = line.tokens[i]?.raw.replace(/,/g, '') ?? '';
  const fraction = ratio(text);
  if (fraction === 'none') return { value: undefined, next: i + 1 };
  if (fraction !== undefined) return { value: fraction, next: i + 1 };
  if (!/^\d*\.?\d+(e\d+)?$/.test(text)) return undefined;
  const value = Number(text);
  if (!Number.isFinite(value)) return { value: undefined, next: i + 1 };
  return mixed(line, value, i + 1) ?? { value, next: i + 1 };
}

/** "1 1/2", "1-1/2", "1 and 1/2". */
function mixed(line: Line, whole: number, i: number): Count | undefined {
  const join =
    line.tokens[i]?.raw === '-' || wordAt(line, i) === 'and' || line.tokens[i]?.raw === '&' ? i + 1 : i;
  const part = ratio(line.tokens[join]?.raw ?? '');
  if (typeof part !== 'number' || part >= 1 || !Number.isInteger(whole)) return undefined;
  return { value: whole + part, next: join + 1 };
}

function ratio(text: string): number | 'none' | undefined {
  const match = /^(\d{1,3})\/(\d{1,3})$/.exec(text);
  if (!match) return undefined;
  const [top, bottom] = [Number(match[1]), Number(match[2])];
  if (bottom === 0) return 'none';
  return KITCHEN_PARTS.has(bottom) && top < bottom ? top / bottom : undefined;
}

function negativeAt(line: Line, i: number): Count | undefined {
  const sign = line.tokens[i];
  const after = line.tokens[i + 1];
  if (sign?.raw !== '-' || after?.kind !== 'number' || after.spaced || (i > 0 && !sign.spaced))
    return undefined;
  const found = digitsAt(line, i + 1);
  return found?.value === undefined ? found : { value: -found.value, next: found.next };
}

/** "forty", "twenty four", "one twenty", "a dozen", "two dozen", "half", "a couple of". */
function wordsAt(line: Line, i: number): Count | undefined {
  const word = wordAt(line, i);
  if (word === 'a' || word === 'an') return articleAt(line, i);
  const multiple = MULTIPLES.get(word);
  if (multiple !== undefined && word !== 'dozens') return { value: multiple, next: skipOf(line, i + 1) };
  const whole = NUMBER_WORDS.get(word);
  if (whole === undefined) return partAt(line, i);
  if (whole === 1 && !countable(line, i + 1)) return undefined;
  const parts = partsAfter(line, whole, i + 1);
  if (parts) return parts;
  const unit = NUMBER_WORDS.get(wordAt(line, i + 1));
  if (whole >= 20 && unit !== undefined && unit > 0 && unit < 10) return { value: whole + unit, next: i + 2 };
  const hundreds = whole > 0 && whole < 10 && (unit ?? 0) >= 10 ? belowHundred(line, i + 1) : undefined;
  if (hundreds) return { value: whole * 100 + hundreds.value, next: hundreds.next };
  return { value: whole, next: i + 1 };
}

/** "two thirds of a cup", "three quarters": so many parts. */
function partsAfter(line: Line, whole: number, i: number): Count | undefined {
  const part = /^(?:thirds|quarters|fourths|eighths)$/.test(wordAt(line, i))
    ? PARTS.get(wordAt(line, i))
    : undefined;
  if (part === undefined || !Number.isInteger(whole) || whole < 1 || whole > 7) return undefined;
  const of = wordAt(line, i + 1) === 'of' ? i + 2 : i + 1;
  const next = wordAt(line, of) === 'a' ? of + 1 : of;
  return { value: whole * part, next: phraseAt(line, next)?.phrase.meaning.sym === 'U' ? next : i + 1 };
}

/** "two dozen and 3 cups": the second number counts something else. */
const isOfThing = (line: Line, i: number): boolean => phraseAt(line, i)?.phrase.meaning.sym === 'U';

const skipOf = (line: Line, i: number): number => (wordAt(line, i) === 'of' ? i + 1 : i);

function articleAt(line: Line, i: number): Count | undefined {
  const multiple = MULTIPLES.get(wordAt(line, i + 1));
  if (multiple !== undefined) return { value: multiple, next: skipOf(line, i + 2) };
  if (PARTS.has(wordAt(line, i + 1))) return partAt(line, i + 1);
  return phraseAt(line, i + 1)?.phrase.meaning.sym === 'U' ? { value: 1, next: i + 1 } : undefined;
}

/** A part counts only of a measure: "half a cup", "quarter cup"; "half dozen" is six. */
function partAt(line: Line, i: number): Count | undefined {
  const part = PARTS.get(wordAt(line, i));
  if (part === undefined) return undefined;
  const next = wordAt(line, i + 1) === 'a' ? i + 2 : i + 1;
  if (MULTIPLES.has(wordAt(line, next)))
    return { value: part * (MULTIPLES.get(wordAt(line, next)) ?? 1), next: next + 1 };
  return phraseAt(line, next)?.phrase.meaning.sym === 'U' ? { value: part, next } : undefined;
}

const countable = (line: Line, i: number): boolean => {
  const sym = phraseAt(line, i)?.phrase.meaning.sym;
  return (
    (sym !== undefined && 'UPRFAB'.includes(sym)) ||
    /^(batch|no|dozen|doz|dz|is|are|hundred|thousand|and)/.test(wordAt(line, i)) ||
    (NUMBER_WORDS.get(wordAt(line, i)) ?? 0) >= 10
  );
};

function times(line: Line, count: Count | undefined): Count | undefined {
  if (count?.value === undefined) return count;
  const multiple = MULTIPLES.get(wordAt(line, count.next));
  if (multiple === undefined) return rest(line, count, wordAt(line, count.next - 1));
  const many = { value: count.value * multiple, next: skipOf(line, count.next + 1) };
  return rest(line, many, wordAt(line, count.next));
}

/** What follows a multiple: "a dozen and a half", "one hundred twenty", "a hundred and fifty". */
function rest(line: Line, count: Count, said: string): Count {
  const multiple = MULTIPLES.get(said);
  if (multiple === undefined || count.value === undefined) return count;
  const and = wordAt(line, count.next) === 'and';
  const at = and ? count.next + 1 : count.next;
  const part = PARTS.get(wordAt(line, wordAt(line, at) === 'a' ? at + 1 : at));
  if (and && part !== undefined)
    return { value: count.value + part * multiple, next: wordAt(line, at) === 'a' ? at + 2 : at + 1 };
  const more = multiple < 100 && !and ? undefined : belowHundred(line, at);
  return more === undefined ? count : { value: count.value + more.value, next: more.next };
}

/** "twenty", "twenty five", "3": what is added to dozens and hundreds. */
function belowHundred(line: Line, i: number): { value: number; next: number } | undefined {
  const digits = /^\d{1,2}$/.exec(line.tokens[i]?.raw ?? '')?.[0];
  if (digits !== undefined)
    return isOfThing(line, i + 1) ? undefined : { value: Number(digits), next: i + 1 };
  const tens = NUMBER_WORDS.get(wordAt(line, i));
  if (tens === undefined) return undefined;
  const unit = NUMBER_WORDS.get(wordAt(line, i + 1));
  const isBoth = tens >= 20 && unit !== undefined && unit > 0 && unit < 10;
  return isBoth ? { value: tens + unit, next: i + 2 } : { value: tens, next: i + 1 };
}

/** "between 4 and 5 cups". */
const betweenEnd = (line: Line, first: Count): Count | undefined =>
  /^(?:and|&|-)$/.test(wordAt(line, first.next)) ? oneCountAt(line, first.next + 1) : rangeEnd(line, first);

/** "2-3", "20 to 24 g", "30 to 40 bars". */
function rangeEnd(line: Line, first: Count): Count | undefined {
  const sign = line.tokens[first.next];
  if (sign?.raw === '-' && line.tokens[first.next + 1]?.kind === 'number')
    return oneCountAt(line, first.next + 1);
  if (sign?.word !== 'to' && sign?.word !== 'or') return undefined;
  const end = oneCountAt(line, first.next + 1);
  return end && /^[UPR]$/.test(phraseAt(line, end.next)?.phrase.meaning.sym ?? '') ? end : undefined;
}
