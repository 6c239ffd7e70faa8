import { Problem } from '../problem.ts';
import { parseQuantity } from '../quantity/parse-quantity.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { readUnit, type Unit } from '../units/unit.ts';
import { readStatedMass } from './stated-mass.ts';
import { BULLET, FILL_WORDS, LEFT_TO_THE_COOK } from './words.ts';
import type { WrittenLine, WrittenMeasure } from './written-line.ts';

/** Whether words are the name or an alias of a food, exactly. */
export type IsFood = (words: string) => boolean;

/** An amount is at most this many words: "two and a half dozen". */
const MOST_AMOUNT_WORDS = 6;
const MOST_UNIT_WORDS = 3;

/**
 * Takes one ingredient line apart: "1 1/2 cups of rolled oats, toasted" is 3/2 cup, "rolled oats", "toasted".
 * The amount may also come last: "rolled oats 2 cups". Throws `bad_quantity` for an amount below zero.
 */
export function readLine(line: string, isFood: IsFood): WrittenLine {
  const written = line.trim().replace(BULLET, '');
  if (isFood(written)) return { written, measures: [], foodWords: written, leftToTheCook: false };
  const parentheses = [...written.matchAll(/\(([^()]*)\)/g)].map((match) => match[1] ?? '');
  const bare = unglued(written.replace(/\([^()]*\)/g, ' '));
  const [beforeComma = '', ...afterComma] = bare.split(/,(?!\d{3}\b)/);
  const words = beforeComma.split(' ').filter(Boolean);
  const lead = readMeasures(words, isFood);
  const { measures, rest, eachG } = lead.measures.length > 0 ? lead : readTrailing(words, isFood);
  const prep = afterComma.join(',').trim();
  const stated = eachG === undefined ? readStatedMass(written, parentheses, measures[0]?.unitId) : undefined;
  const foodWords = withoutCookWords(rest.join(' '));
  return {
    written,
    measures,
    foodWords,
    ...(prep !== '' && { prep }),
    ...(eachG !== undefined ? { stated: { massG: eachG, of: 'each' as const } } : stated && { stated }),
    leftToTheCook: measures.length === 0 && LEFT_TO_THE_COOK.test(bare),
  };
}

interface Measured {
  readonly measures: readonly WrittenMeasure[];
  readonly rest: readonly string[];
  /** "2 x 30 g", "1 15-oz can": grams of each. */
  readonly eachG?: number;
}

function readMeasures(words: readonly string[], isFood: IsFood): Measured {
  const amount = leadingAmount(words) ?? oneOfUnit(words, isFood);
  if (!amount) return { measures: [], rest: words };
  let rest = words.slice(amount.length);
  const size = leadingSize(rest);
  if (size) rest = rest.slice(size.length);
  const unit = leadingUnit(rest, isFood);
  if (unit) rest = rest.slice(unit.length);
  const measure = { quantity: amount.quantity, ...(unit && { unitId: unit.unit.id }) };
  const more = unit && !size ? furtherMeasures(rest, isFood) : { measures: [], rest };
  return {
    measures: [measure, ...more.measures],
    rest: withoutOf(more.rest),
    ...(size && { eachG: size.massG }),
  };
}

/** "1/4 cup plus 2 tbsp honey": a further amount with a unit of its own. */
function furtherMeasures(words: readonly string[], isFood: IsFood): Measured {
  if (!/^(?:\+|plus|and|&)$/i.test(words[0] ?? '')) return { measures: [], rest: words };
  const further = readMeasures(words.slice(1), isFood);
  return further.measures[0]?.unitId ? further : { measures: [], rest: words };
}

/** "rolled oats 2 cups", "honey: 30 g". */
function readTrailing(words: readonly string[], isFood: IsFood): Measured {
  const start = words.findIndex((word, i) => i > 0 && /^[\d.½⅓⅔¼¾⅛]/.test(word));
  if (start < 1) return { measures: [], rest: words };
  const tail = readMeasures(words.slice(start), isFood);
  const names = words.slice(0, start).map((word) => word.replace(/[:=]$/, ''));
  const food = names.filter((word) => !/^[-–—:=]?$/.test(word));
  return tail.rest.length === 0 && tail.measures.length > 0
    ? { ...tail, rest: food }
    : { measures: [], rest: words };
}

function leadingAmount(words: readonly string[]): { quantity: Quantity; length: number } | undefined {
  if (/^-\d/.test(words[0] ?? '')) parseQuantity(words[0] ?? '');
  for (let length = Math.min(MOST_AMOUNT_WORDS, words.length); length > 0; length--) {
    const quantity = tryQuantity(words.slice(0, length).join(' '));
    if (quantity) return { quantity, length };
  }
  return undefined;
}

/** "pinch of salt", "scoop of whey": a unit before "of" is one of it. */
function oneOfUnit(words: readonly string[], isFood: IsFood): { quantity: Quantity; length: 0 } | undefined {
  const unit = leadingUnit(words, isFood);
  return unit && /^of$/i.test(words[unit.length] ?? '')
    ? { quantity: parseQuantity('1'), length: 0 }
    : undefined;
}

function tryQuantity(text: string): Quantity | undefined {
  if (!/^[\d.½⅓⅔¼¾⅕-⅞~]|^[a-z]+/i.test(text)) return undefined;
  try {
    return parseQuantity(text);
  } catch (error) {
    if (error instanceof Problem) return undefined;
    throw error;
  }
}

/** "15-oz can", "x 30 g": the size of each, in grams, before what it is a size of. */
function leadingSize(words: readonly string[]): { massG: number; length: number } | undefined {
  const times = /^[x×]$/i.test(words[0] ?? '') ? 1 : 0;
  const joined = words
    .slice(times, times + 2)
    .join(' ')
    .replace(/-/g, ' ')
    .split(' ');
  const quantity = tryQuantity(joined[0] ?? '');
  const unit = quantity && readUnit(joined[1] ?? '');
  if (!quantity || !/^[\d.]/.test(joined[0] ?? '') || unit?.kind !== 'mass') return undefined;
  const used = times + ((words[times] ?? '').includes('-') ? 1 : 2);
  return { massG: quantity.amount * unit.g, length: used };
}

function leadingUnit(words: readonly string[], isFood: IsFood): { unit: Unit; length: number } | undefined {
  const fill = FILL_WORDS.has((words[0] ?? '').toLowerCase()) ? 1 : 0;
  for (let length = MOST_UNIT_WORDS; length > 0; length--) {
    const unit = readUnit(words.slice(fill, fill + length).join(' '));
    if (!unit || fill + length > words.length) continue;
    const rest = withoutOf(words.slice(fill + length)).join(' ');
    const isPartOfName = unit.kind === 'food_word' && !isFood(rest) && isFood(words.join(' '));
    if (!isPartOfName) return { unit, length: fill + length };
  }
  return undefined;
}

const withoutOf = (words: readonly string[]): readonly string[] =>
  /^(?:of|de|from)$/i.test(words[0] ?? '') ? words.slice(/^the$/i.test(words[1] ?? '') ? 2 : 1) : words;

/** Parts numbers from the letters glued to them: "200g oats", "½c". A hyphen before letters is kept. */
function unglued(text: string): string {
  return text
    .replace(/([\d½⅓⅔¼¾⅛⅜⅝⅞])(?=[a-zA-Z#])/g, '$1 ')
    .replace(/\s+/g, ' ')
    .trim();
}

function withoutCookWords(words: string): string {
  return words
    .replace(LEFT_TO_THE_COOK, '')
    .replace(/\boptional\b/i, '')
    .replace(/[\s.:;-]+$/, '')
    .replace(/\s+/g, ' ')
    .trim();
}
