import type { NutrientKey } from '../nutrients.ts';

/** How a declared figure is judged: 21 CFR 101.9(g)(3)-(5). */
export type LabelClass = 'added' | 'natural' | 'limited';

/** Calories and what labels warn of: may not exceed 120 % of the declared value (101.9(g)(5)). */
const LIMITED: ReadonlySet<NutrientKey> = new Set([
  'energyKcal',
  'sugarsG',
  'addedSugarsG',
  'fatG',
  'saturatedFatG',
  'cholesterolMg',
  'sodiumMg',
]);

/** The class of a nutrient that the food holds by nature. One the maker added is class `added`. */
export function labelClass(key: NutrientKey): LabelClass {
  return LIMITED.has(key) ? 'limited' : 'natural';
}

/**
 * What a package may truly hold and still agree with its label: natural nutrients at least 80 %, added ones at
 * least 100 %, the limited ones at most 120 % of the declared value. In the unit of `declared`.
 * Example: `labelAllows('natural', 20)` is `{ least: 16 }`.
 */
export function labelAllows(kind: LabelClass, declared: number): { least?: number; most?: number } {
  if (kind === 'limited') return { most: declared * 1.2 };
  return { least: declared * (kind === 'added' ? 1 : 0.8) };
}
