import { needsOfNoun } from '../allergen-nouns.ts';
import type { Atom } from '../atoms.ts';
import { stem } from '../stem.ts';
import { FACTOR_WORDS } from '../vocabulary/numbers.ts';
import { amountAt, unitAt } from './amounts.ts';
import { type Found, type Line, phraseAt, spanText, wordAt } from './cursor.ts';
import { momentAt } from './moments.ts';

const KEPT_SIGNS = new Set(['?', '+', '=', ',', '&', '/', '.', ';', '-']);

/** Short for a nutrient after a figure only: "20g pro". */
const SHORT_NUTRIENTS: ReadonlyMap<string, string> = new Map([
  ['pro', 'protein'],
  ['prot', 'protein'],
  ['cal', 'energy'],
  ['cals', 'energy'],
  ['sat', 'saturated fat'],
]);

/** The atoms of a line from left to right; at each place the most telling reading wins. */
export function annotate(line: Line): Atom[] {
  const atoms: Atom[] = [];
  let i = 0;
  while (i < line.tokens.length) {
    const found = atomAt(line, i);
    if (found) {
      atoms.push(found.atom);
      i = found.next;
    } else {
      pushWord(line, i, atoms);
      i++;
    }
  }
  return atoms;
}

function pushWord(line: Line, i: number, atoms: Atom[]): void {
  const token = line.tokens[i];
  if (!token || (token.kind === 'sign' && !KEPT_SIGNS.has(token.raw))) return;
  const short = /^[QN]$/.test(atoms.at(-1)?.sym ?? '') ? SHORT_NUTRIENTS.get(token.word) : undefined;
  if (short !== undefined) {
    atoms.push({ sym: 'M', text: token.typed, word: token.word, id: short });
    return;
  }
  const unknown = token.kind === 'word' && token.word.length > 2 && !isKnown(line, token.word);
  atoms.push({ sym: token.word, text: token.typed, word: token.word, ...(unknown ? { unknown } : {}) });
}

const isKnown = (line: Line, word: string): boolean =>
  line.vocabulary.known.has(word) || line.vocabulary.known.has(stem(word));

function atomAt(line: Line, i: number): Found | undefined {
  switch (line.tokens[i]?.kind) {
    case 'url':
      return { atom: { sym: 'H', text: line.tokens[i]?.raw ?? '', word: '' }, next: i + 1 };
    case 'number':
      return numberAt(line, i);
    case 'code':
      return codeAt(line, i);
    case 'sign':
      return momentAt(line, i) ?? amountAt(line, i);
    default:
      return wordAtomAt(line, i);
  }
}

function numberAt(line: Line, i: number): Found | undefined {
  const amount = amountAt(line, i);
  if (amount?.atom.value !== undefined && amount.atom.value < 1 && amount.atom.sym !== 'C') return amount;
  return momentAt(line, i) ?? amount;
}

/** Words after which "R12" is a lot and not a reminder. */
const OF_A_LOT = /^(?:lots?|batch|batches|trace|with|of|from)$/;

/** "WP-07" is an athlete, "B12" a vitamin, "R12" a reminder, anything else a lot or batch. */
function codeAt(line: Line, i: number): Found | undefined {
  const known = phraseFound(line, i);
  if (known) return known;
  const raw = line.tokens[i]?.raw ?? '';
  if (/^r\d{1,6}$/i.test(raw) && !OF_A_LOT.test(wordAt(line, i - 1)))
    return { atom: { sym: 'J', text: raw, word: raw }, next: i + 1 };
  const sym = /^[A-Za-z]{2,3}-\d{2}$/.test(raw) && !/^lots?$/.test(wordAt(line, i - 1)) ? 'K' : 'D';
  return { atom: { sym, text: raw, word: raw }, next: i + 1 };
}

function wordAtomAt(line: Line, i: number): Found | undefined {
  if (/^lots?$/.test(wordAt(line, i))) return lotAt(line, i);
  return (
    phraseFound(line, i) ?? factorAt(line, i) ?? momentAt(line, i) ?? amountAt(line, i) ?? bareUnitAt(line, i)
  );
}

function phraseFound(line: Line, i: number): Found | undefined {
  const match = phraseAt(line, i);
  const word = wordAt(line, i);
  if (!match || (word === 'can' && match.next === i + 1)) return undefined;
  const { meaning } = match.phrase;
  if (meaning.sym === 'U' && word.length === 1) return undefined;
  if (meaning.sym === 'L') return locationAt(line, i, match.next, meaning.id);
  const span = spanText(line, i, match.next);
  const needs =
    meaning.needs ?? (meaning.sym === 'V' || meaning.sym === 'F' ? needsOfNoun(span.word) : undefined);
  const unit = meaning.unit ?? (meaning.sym === 'R' ? pieceOf(line, match.next - 1) : undefined);
  const { sym, id, value, moment } = meaning;
  const { text, word: spelled } = span;
  return { atom: { sym, text, word: spelled, value, unit, id, needs, moment }, next: match.next };
}

/** The piece a recipe's name ends in: "oat bars" are cut into bars. */
function pieceOf(line: Line, i: number): string | undefined {
  const row = line.vocabulary.phrases.get(line.forms[i] ?? '');
  const meaning = row?.find((phrase) => phrase.stems.length === 1)?.meaning;
  return meaning?.sym === 'P' ? meaning.unit : undefined;
}

/** "fridge 2", "fridge two"; "fridge 44" is a reading. */
function locationAt(line: Line, i: number, next: number, id: string | undefined): Found {
  const span = spanText(line, i, next);
  const lettered = /^[a-d]$/.test(wordAt(line, next))
    ? line.vocabulary.locations.get(
        `${span.word.replace(/^(?:refrigerator|frig|reefer)$/, 'fridge')} ${wordAt(line, next)}`,
      )
    : undefined;
  if (lettered !== undefined) {
    const { text, word } = spanText(line, i, next + 1);
    return { atom: { sym: 'L', text, word, id: lettered }, next: next + 1 };
  }
  const number = /^(?:[1-9]|1\d|one|two|three|four)$/.test(wordAt(line, next))
    ? ordinal(wordAt(line, next))
    : undefined;
  if (number !== undefined) {
    const named = line.vocabulary.locations.get(`${span.word} ${number}`);
    const degrees =
      /^(f|c|degrees?|deg|fahrenheit|celsius|bars?|%)$/.test(wordAt(line, next + 1)) ||
      wordAt(line, next + 1) === ':';
    if (!degrees && (named !== undefined || Number(number) < 10))
      return {
        atom: { sym: 'L', text: `${span.text} ${number}`, word: `${span.word} ${number}`, id: named },
        next: next + 1,
      };
  }
  return { atom: { sym: 'L', ...span, id }, next };
}

const ordinal = (word: string): string => ({ one: '1', two: '2', three: '3', four: '4' })[word] ?? word;

function lotAt(line: Line, i: number): Found | undefined {
  let at = i + 1;
  while (/^(#|:|no|number|code)$/.test(wordAt(line, at))) at++;
  const token = line.tokens[at];
  const glued = line.tokens[at + 1]?.raw === '-' ? line.tokens[at + 2] : undefined;
  if (!token) return undefined;
  if (glued && token.kind === 'word' && glued.kind === 'number')
    return { atom: { sym: 'D', text: `${token.raw}-${glued.raw}`, word: token.raw }, next: at + 3 };
  if (token.kind !== 'code' && token.kind !== 'number') return undefined;
  let text = token.raw;
  let next = at + 1;
  for (
    let more = line.tokens[next];
    more && !more.spaced && /^[\w./-]+$/.test(more.raw);
    more = line.tokens[next]
  ) {
    text += more.raw;
    next++;
  }
  return { atom: { sym: 'D', text: text.replace(/[./-]+$/, ''), word: text }, next };
}

/** "double", "x2", "times 3", "half a batch". */
function factorAt(line: Line, i: number): Found | undefined {
  const word = wordAt(line, i);
  const factor = FACTOR_WORDS.get(word);
  if (factor !== undefined) {
    const next = /^(batch|batches)$/.test(wordAt(line, i + 1)) ? i + 2 : i + 1;
    return { atom: { sym: 'B', ...spanText(line, i, next), value: factor }, next };
  }
  if ((word === 'x' || word === 'times') && line.tokens[i + 1]?.kind === 'number') {
    const value = Number(line.tokens[i + 1]?.raw);
    return Number.isFinite(value)
      ? { atom: { sym: 'B', ...spanText(line, i, i + 2), value }, next: i + 2 }
      : undefined;
  }
  return batchAndAHalfAt(line, i, word) ?? partBatchAt(line, i, word);
}

/** "a batch and a half of oat bars". */
function batchAndAHalfAt(line: Line, i: number, word: string): Found | undefined {
  const at = word === 'a' || word === 'one' || word === '1' ? i + 1 : i;
  if (!/^(?:batch|recipe)$/.test(wordAt(line, at)) || wordAt(line, at + 1) !== 'and') return undefined;
  const half = wordAt(line, at + 2) === 'a' ? at + 3 : at + 2;
  if (wordAt(line, half) !== 'half') return undefined;
  const next = wordAt(line, half + 1) === 'of' ? half + 2 : half + 1;
  return { atom: { sym: 'B', ...spanText(line, i, half + 1), value: 1.5 }, next };
}

function partBatchAt(line: Line, i: number, word: string): Found | undefined {
  const value = { half: 0.5, quarter: 0.25, third: 1 / 3 }[word];
  if (value === undefined) return undefined;
  let next = i + 1;
  while (/^(of|a|the|our|this|that)$/.test(wordAt(line, next))) next++;
  const skipped = next > i + 1;
  if (/^(batch|recipe)$/.test(wordAt(line, next))) {
    const tail = wordAt(line, next + 1) === 'of' ? next + 2 : next + 1;
    return { atom: { sym: 'B', ...spanText(line, i, next + 1), value }, next: tail };
  }
  const isPart = line.tokens[i + 1]?.word === 'of' && line.tokens[next]?.kind === 'number';
  const ofRecipe = skipped && phraseAt(line, next)?.phrase.meaning.sym === 'R';
  return isPart || ofRecipe ? { atom: { sym: 'B', ...spanText(line, i, next), value }, next } : undefined;
}

/** T or t standing alone: "3 t to T". */
function bareUnitAt(line: Line, i: number): Found | undefined {
  const raw = line.tokens[i]?.raw ?? '';
  if (raw.length !== 1 || !/^(to|in|into|per|a|an|=|\?|one|how|many)$/.test(wordAt(line, i - 1)))
    return undefined;
  const unit = unitAt(line, i, raw);
  return unit && { atom: { sym: 'U', text: raw, word: raw, unit: unit.id }, next: unit.next };
}
