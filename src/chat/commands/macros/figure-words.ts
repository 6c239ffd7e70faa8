import type { NutrientRange } from '../../../nutrition/certainty/range.ts';
import { NUTRIENTS, type NutrientKey } from '../../../nutrition/nutrients.ts';

type NutrientUnit = (typeof NUTRIENTS)[number]['unit'];

const facts = new Map(NUTRIENTS.map((nutrient) => [nutrient.key, nutrient]));

/** The word for a nutrient in requests and answers. */
export const nutrientName = (key: NutrientKey): string => facts.get(key)?.name ?? key;

/** The unit a nutrient is told in. */
export const nutrientUnit = (key: NutrientKey): NutrientUnit => facts.get(key)?.unit ?? 'g';

/**
 * A figure rounded as far as a kitchen can know it: kcal and 10 or more whole, less than 10 to a tenth.
 * Example: 21.63 is "22", 6.68 is "6.7".
 */
export function figure(value: number, unit: NutrientUnit): string {
  const places = unit === 'kcal' || Math.abs(value) >= 10 ? 0 : 1;
  return Number(value.toFixed(places)).toString();
}

/** A figure with its unit: "22 g". */
export const amountWords = (value: number, key: NutrientKey): string =>
  `${figure(value, nutrientUnit(key))} ${nutrientUnit(key)}`;

/** A range: "20 to 24"; "19 or more" where nothing bounds it above; "22" when both ends read alike. */
export function rangeWords(range: NutrientRange, key: NutrientKey): string {
  const low = figure(range.low, nutrientUnit(key));
  if (range.high === undefined) return `${low} or more`;
  const high = figure(range.high, nutrientUnit(key));
  return low === high ? low : `${low} to ${high}`;
}

/** Grams of food: "62 g". */
export const grams = (massG: number): string => `${figure(massG, 'g')} g`;

/** "a bar", "an oat cup". */
export const oneOf = (word: string): string => `${/^[aeiou]/i.test(word) ? 'an' : 'a'} ${word}`;

/** "bar" or "bars" to go with a number. */
export function piecesWord(word: string, count: number): string {
  if (count === 1) return word;
  return /(?:s|x|ch|sh)$/.test(word) ? `${word}es` : `${word}s`;
}

const byWord = new Map<string, NutrientKey>(
  NUTRIENTS.flatMap(({ key, name, spellings }) =>
    [name, key, ...spellings].map((word) => [word.toLowerCase(), key] as const),
  ),
);

/** The nutrient a word names, by name or spelling; undefined when it is none this kitchen carries. */
export const nutrientOf = (word: string): NutrientKey | undefined =>
  byWord.get(word.trim().toLowerCase().replace(/_/g, ' '));
