import { MULTIPLES, NUMBER_WORDS, PARTS } from '../vocabulary/numbers.ts';
import { type Line, phraseAt, wordAt } from './cursor.ts';

/** A number as said: `value` is missing for what is no number, "1/0". */
export interface Count {
  readonly value: number | undefined;
  readonly most?: number;
  readonly next: number;
}

const KITCHEN_PARTS = new Set([2, 3, 4, 5, 6, 8, 16]);

/** A number, fraction, mixed number, range or number in words that starts at this token. */
export function countAt(line: Line, i: number): Count | undefined {
  const first = oneCountAt(line, i);
  if (!first || first.value === undefined) return first;
  const second = rangeEnd(line, first);
  if (second?.value === undefined || second.value <= first.value) return first;
  return { value: first.value, most: second.value, next: second.next };
}

function oneCountAt(line: Line, i: number): Count | undefined {
  const token = line.tokens[i];
  if (!token) return undefined;
  if (token.kind === 'number') return times(line, digitsAt(line, i));
  if (token.kind === 'sign') return negativeAt(line, i);
  if (token.kind !== 'word') return undefined;
  return times(line, wordsAt(line, i));
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

/** "forty", "twenty four", "a dozen", "two dozen", "half", "a couple of". */
function wordsAt(line: Line, i: number): Count | undefined {
  const word = wordAt(line, i);
  if (word === 'a' || word === 'an') return articleAt(line, i);
  const multiple = MULTIPLES.get(word);
  if (multiple !== undefined && word !== 'dozens') return { value: multiple, next: skipOf(line, i + 1) };
  const whole = NUMBER_WORDS.get(word);
  if (whole === undefined) return partAt(line, i);
  if (whole === 1 && !countable(line, i + 1)) return undefined;
  const unit = NUMBER_WORDS.get(wordAt(line, i + 1));
  if (whole >= 20 && unit !== undefined && unit > 0 && unit < 10) return { value: whole + unit, next: i + 2 };
  if (wordAt(line, i + 1) === 'and') {
    const half = wordAt(line, i + 2) === 'a' ? i + 3 : i + 2;
    const part = PARTS.get(wordAt(line, half));
    if (part !== undefined) return { value: whole + part, next: half + 1 };
  }
  return { value: whole, next: i + 1 };
}

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
    /^(batch|no|dozen|is|are|hundred|and)/.test(wordAt(line, i))
  );
};

function times(line: Line, count: Count | undefined): Count | undefined {
  if (count?.value === undefined) return count;
  const multiple = MULTIPLES.get(wordAt(line, count.next));
  return multiple === undefined
    ? count
    : { value: count.value * multiple, next: skipOf(line, count.next + 1) };
}

/** "2-3", "20 to 24 g". */
function rangeEnd(line: Line, first: Count): Count | undefined {
  const sign = line.tokens[first.next];
  if (sign?.raw === '-' && line.tokens[first.next + 1]?.kind === 'number')
    return oneCountAt(line, first.next + 1);
  if (sign?.word !== 'to' && sign?.word !== 'or') return undefined;
  const end = oneCountAt(line, first.next + 1);
  return end && phraseAt(line, end.next)?.phrase.meaning.sym === 'U' ? end : undefined;
}
