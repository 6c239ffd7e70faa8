import { Problem } from '../problem.ts';
import { parseQuantity } from '../quantity/parse-quantity.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { readUnit, type Unit, unitById } from '../units/unit.ts';
import { FILL_WORDS } from './words.ts';
import type { WrittenMeasure } from './written-line.ts';

/** Whether words are the name or an alias of a food, exactly. */
export type IsFood = (words: string) => boolean;

/** An amount is at most this many words: "two and a half dozen". */
const MOST_AMOUNT_WORDS = 6;
const MOST_UNIT_WORDS = 3;

/** The measures at the head of some words, and what comes after them. */
export interface Measured {
  readonly measures: readonly WrittenMeasure[];
  readonly rest: readonly string[];
  /** "2 x 30 g", "1 15-oz can": grams of each. */
  readonly eachG?: number;
}

/**
 * Reads the amount at the head: "1/4 cup plus 2 tbsp", "1 qt 1 2/3 cups" and "2 lb 4 oz" are one amount in parts.
 * Of an amount told twice ("7.5 oz or 1 2/3 cups") the weight counts, else the first.
 * @throws Problem `bad_quantity` for an amount below zero.
 */
export function readMeasures(words: readonly string[], isFood: IsFood): Measured {
  const first = readParts(words, isFood);
  if (!/^or$/i.test(first.rest[0] ?? '') || !first.measures[0]?.unitId) return first;
  const other = readParts(first.rest.slice(1), isFood);
  if (!other.measures[0]?.unitId) return first;
  return isWeighed(other) && !isWeighed(first) ? other : { ...first, rest: other.rest };
}

/** Whether words are an amount and nothing else. */
export function isMeasureOnly(text: string, isFood: IsFood): boolean {
  const { measures, rest } = readMeasures(unglued(text).split(' ').filter(Boolean), isFood);
  return measures.length > 0 && rest.length === 0;
}

/** Whether every part of an amount is a weight. */
export const isWeighed = ({ measures }: Measured): boolean =>
  measures.length > 0 && measures.every(({ unitId }) => unitById(unitId ?? '')?.kind === 'mass');

function readParts(words: readonly string[], isFood: IsFood): Measured {
  const amount = leadingAmount(words) ?? oneOfUnit(words, isFood);
  if (!amount) return { measures: [], rest: words };
  let rest = words.slice(amount.length);
  const size = leadingSize(rest);
  if (size) rest = rest.slice(size.length);
  const unit = leadingUnit(rest, isFood);
  if (unit) rest = rest.slice(unit.length);
  const measure = { quantity: amount.quantity, ...(unit && { unitId: unit.unit.id }) };
  const more = unit && !size ? furtherParts(rest, unit.unit, isFood) : { measures: [], rest };
  return {
    measures: [measure, ...more.measures],
    rest: withoutOf(more.rest),
    ...(size && { eachG: size.massG }),
  };
}

/** "1/4 cup plus 2 tbsp honey", "1 qt 1 2/3 cups oats": a further amount with a unit of its own. */
function furtherParts(words: readonly string[], before: Unit, isFood: IsFood): Measured {
  const isJoined = /^(?:\+|plus|and|&)$/i.test(words[0] ?? '');
  const further = readParts(isJoined ? words.slice(1) : words, isFood);
  const unit = unitById(further.measures[0]?.unitId ?? '');
  const belongs = unit && (isJoined || isSmaller(unit, before));
  return belongs && further.eachG === undefined ? further : { measures: [], rest: words };
}

/** Without a "plus", only a smaller measure of the same kind goes on with the amount. */
function isSmaller(unit: Unit, before: Unit): boolean {
  if (unit.kind === 'volume' && before.kind === 'volume') return unit.ml < before.ml;
  return unit.kind === 'mass' && before.kind === 'mass' && unit.g < before.g;
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
export function unglued(text: string): string {
  return text
    .replace(/([\d½⅓⅔¼¾⅛⅜⅝⅞])(?=[a-zA-Z#])/g, '$1 ')
    .replace(/\s+/g, ' ')
    .trim();
}
