import type { Atom, Sym } from '../atoms.ts';
import { stem } from '../stem.ts';
import { DURATION_UNITS } from '../vocabulary/days.ts';
import { UNIT_SPELLINGS } from '../vocabulary/units.ts';
import { type Found, type Line, phraseAt, spanText, wordAt } from './cursor.ts';
import { type Count, countAt } from './numbers.ts';

/** A number with what belongs to it: a unit, degrees, money, a share, a duration, a pan, a factor. */
export function amountAt(line: Line, i: number): Found | undefined {
  const money = line.tokens[i]?.raw === '$';
  const disher = disherAt(line, i);
  if (disher) return disher;
  const count = countAt(line, money ? i + 1 : i);
  if (!count) return money ? undefined : timeInWords(line, i);
  if (money) return found(line, i, count, 'C', count.next);
  return (
    panAt(line, i, count) ??
    signAt(line, i, count) ??
    wordUnitAt(line, i, count) ??
    found(line, i, count, 'N', count.next)
  );
}

/** "an hour", "half an hour", "an hour and a half", "hour and a half". */
function timeInWords(line: Line, i: number): Found | undefined {
  const half = wordAt(line, i) === 'half';
  const article = half ? wordAt(line, i + 1) : wordAt(line, i);
  const at = (half ? i + 1 : i) + (article === 'a' || article === 'an' ? 1 : 0);
  const minutes = DURATION_UNITS.get(wordAt(line, at));
  const more = andAHalf(line, at + 1);
  if (minutes === undefined || minutes > 60 || (at === i && more === undefined)) return undefined;
  const value = minutes * ((half ? 0.5 : 1) + (more === undefined ? 0 : 0.5));
  return found(line, i, { value, next: at + 1 }, 'Z', more ?? at + 1, { unit: 'min' });
}

function found(
  line: Line,
  from: number,
  count: Count,
  sym: Sym,
  next: number,
  more: Partial<Atom> = {},
): Found {
  const atom: Atom = { sym, ...spanText(line, from, next), value: count.value, most: count.most, ...more };
  return { atom, next };
}

/** "9x13", "9 by 13". */
function panAt(line: Line, i: number, count: Count): Found | undefined {
  const between = wordAt(line, count.next);
  if (between !== 'x' && between !== 'by') return undefined;
  const width = countAt(line, count.next + 1);
  if (!width) return between === 'x' ? found(line, i, count, 'B', count.next + 1) : undefined;
  const [least, most] = [count.value ?? 0, width.value ?? 0];
  if (least < 5 || most < 5 || most > 30) return found(line, i, count, 'B', count.next + 1);
  const tail = /^(pan|pans|inch|in|baking)$/.test(wordAt(line, width.next)) ? width.next + 1 : width.next;
  return found(line, i, { value: 1, next: tail }, 'X', tail, { id: `${least}x${most}` });
}

function signAt(line: Line, i: number, count: Count): Found | undefined {
  const sign = line.tokens[count.next]?.raw;
  if (sign === '%') {
    if (wordAt(line, count.next + 1) !== 'milk') return found(line, i, count, 'G', count.next + 1);
    const text = `${count.value}% milk`;
    const row = line.vocabulary.phrases.get(`${count.value}%`)?.find((phrase) => phrase.stems[1] === 'milk');
    return { atom: { sym: 'F', text, word: text, id: row?.meaning.id }, next: count.next + 2 };
  }
  if (sign === '#') return found(line, i, count, 'Q', count.next + 1, { unit: 'lb' });
  return undefined;
}

/** First words of all that may belong to a number; any other word is looked up no further. */
const FOLLOWS_NUMBER: ReadonlySet<string> = new Set([
  ...'degree degrees deg degs f c t l g fahrenheit farenheit celsius celcius centigrade dollar dollars buck bucks usd cent cents percent'.split(
    ' ',
  ),
  ...'batch batches recipe recipes'.split(' '),
  ...DURATION_UNITS.keys(),
  ...UNIT_SPELLINGS.flatMap(([, spellings]) => spellings)
    .map((spelling) => spelling.split(' ')[0] ?? '')
    .flatMap((word) => [word, stem(word)]),
]);

const DEGREE = /^(degrees?|deg|degs)$/;
const FAHRENHEIT = /^(f|fahrenheit|farenheit)$/;
const CELSIUS = /^(celsius|celcius|centigrade)$/;

function wordUnitAt(line: Line, i: number, count: Count): Found | undefined {
  const token = line.tokens[count.next];
  if (token?.kind !== 'word') return undefined;
  const { word, raw } = token;
  if (!FOLLOWS_NUMBER.has(word)) return undefined;
  const degrees = DEGREE.test(word) ? count.next + 1 : count.next;
  const scale = wordAt(line, degrees);
  if (FAHRENHEIT.test(scale)) return found(line, i, count, 'T', degrees + 1, { unit: 'f' });
  if (CELSIUS.test(scale) || (scale === 'c' && (degrees > count.next || isCelsius(line, count.next))))
    return found(line, i, count, 'T', degrees + 1, { unit: 'c' });
  if (degrees > count.next) return found(line, i, count, 'T', degrees, { unit: 'f' });
  if (/^(dollars?|bucks?|usd)$/.test(word)) return found(line, i, count, 'C', count.next + 1);
  if (/^cents?$/.test(word))
    return found(line, i, { ...count, value: (count.value ?? 0) / 100 }, 'C', count.next + 1);
  if (word === 'percent') return found(line, i, count, 'G', count.next + 1);
  const minutes = DURATION_UNITS.get(word);
  if (minutes !== undefined) {
    const half = andAHalf(line, count.next + 1);
    const value = ((count.value ?? 0) + (half === undefined ? 0 : 0.5)) * minutes;
    return found(line, i, { ...count, value }, 'Z', half ?? count.next + 1, { unit: word });
  }
  if (/^(batch|batches|recipes)$/.test(word) || (word === 'recipe' && (count.value ?? 1) < 1))
    return found(line, i, count, 'B', skipOf(line, count.next + 1));
  const unit = unitAt(line, count.next, raw);
  if (!unit) return undefined;
  const half = halfMore(line, unit.next);
  const value = half === undefined ? count : { ...count, value: (count.value ?? 0) + 0.5 };
  return found(line, i, value, 'Q', half ?? unit.next, { unit: unit.id });
}

/** "an hour and a half": where it ends. */
/** "a cup and a half of oats", but "a cup and half a teaspoon" is two amounts. */
function halfMore(line: Line, i: number): number | undefined {
  const end = andAHalf(line, i);
  if (end === undefined || wordAt(line, end) === 'a') return undefined;
  return unitAt(line, end, line.tokens[end]?.raw ?? '') ? undefined : end;
}

function andAHalf(line: Line, i: number): number | undefined {
  if (wordAt(line, i) !== 'and') return undefined;
  const at = wordAt(line, i + 1) === 'a' ? i + 2 : i + 1;
  return wordAt(line, at) === 'half' ? at + 1 : undefined;
}

const skipOf = (line: Line, i: number): number => (wordAt(line, i) === 'of' ? i + 1 : i);

/** "6C" in a message about cold or heat; "6 C flour" is cups. */
function isCelsius(line: Line, i: number): boolean {
  const after = phraseAt(line, i + 1)?.phrase.meaning.sym;
  if (after === 'F' || wordAt(line, i + 1) === 'of') return false;
  if (line.tokens[i]?.raw === 'C' && !line.tokens[i]?.spaced) return true;
  return line.forms.some((form) => COLD_OR_HOT.has(form));
}

const COLD_OR_HOT = new Set(
  'fridge freezer cooler refrigerator walk reach temp temperature reads reading cold hot oven fahrenheit f thermometer cooling'.split(
    ' ',
  ),
);

/** A unit at this token; T is a tablespoon, t a teaspoon, c and C a cup. */
export function unitAt(line: Line, i: number, raw: string): { id: string; next: number } | undefined {
  if (raw.length === 1) {
    const id = SINGLE.get(raw);
    return id === undefined ? undefined : { id, next: skipDot(line, i + 1) };
  }
  const match = phraseAt(line, i);
  if (match?.phrase.meaning.sym !== 'U') return undefined;
  return { id: match.phrase.meaning.unit ?? '', next: skipDot(line, match.next) };
}

const SINGLE: ReadonlyMap<string, string> = new Map([
  ['T', 'tbsp'],
  ['t', 'tsp'],
  ['c', 'cup'],
  ['C', 'cup'],
  ['g', 'g'],
  ['G', 'g'],
  ['l', 'l'],
  ['L', 'l'],
]);

/** "2 tsp. salt": the point belongs to the unit. */
const skipDot = (line: Line, i: number): number =>
  line.tokens[i]?.raw === '.' && !line.tokens[i]?.spaced && i + 1 < line.tokens.length ? i + 1 : i;

/** "#16 scoop", "no. 16 scoop": a disher, told by its number. */
function disherAt(line: Line, i: number): Found | undefined {
  const raw = line.tokens[i]?.raw;
  if (raw !== '#' && !/^no$/i.test(raw ?? '')) return undefined;
  const at = line.tokens[i + 1]?.raw === '.' ? i + 2 : i + 1;
  const number = line.tokens[at];
  if (number?.kind !== 'number' || !/^(scoops?|dishers?)$/.test(wordAt(line, at + 1))) return undefined;
  return found(line, i, { value: 1, next: at + 2 }, 'Q', at + 2, { unit: `disher_${number.raw}` });
}
