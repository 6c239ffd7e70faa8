import type { Food } from '../food.ts';
import type { NutrientKey } from '../nutrients.ts';
import type { Totals } from '../totals.ts';
import { percentDailyValue } from './daily-values.ts';
import { type LabelAmount, labelAmount } from './rounding.ts';

/** One line of a label. A line whose figure nobody has is kept, without an amount. */
export interface LabelRow {
  readonly name: string;
  /** Absent for trans fat, which the food table does not carry. */
  readonly key?: NutrientKey;
  /** 0 for a main line, 1 for a part of the line above, 2 for a part of a part. */
  readonly indent: 0 | 1 | 2;
  readonly amount?: LabelAmount;
  /** The amount before rounding, in the nutrient's unit. */
  readonly exact?: number;
  readonly percentDv?: number;
  /** True when some food has no figure, so the amount is a lower bound. */
  readonly atLeast: boolean;
  readonly missing: readonly Food[];
}

type Line = readonly [name: string, key: NutrientKey | undefined, indent: 0 | 1 | 2];

/** The nutrients a label must carry, in the order of 21 CFR 101.9(c) as amended in 2016. */
const LINES: readonly Line[] = [
  ['Calories', 'energyKcal', 0],
  ['Total fat', 'fatG', 0],
  ['Saturated fat', 'saturatedFatG', 1],
  ['Trans fat', undefined, 1],
  ['Cholesterol', 'cholesterolMg', 0],
  ['Sodium', 'sodiumMg', 0],
  ['Total carbohydrate', 'carbohydrateG', 0],
  ['Dietary fiber', 'fiberG', 1],
  ['Total sugars', 'sugarsG', 1],
  ['Added sugars', 'addedSugarsG', 2],
  ['Protein', 'proteinG', 0],
  ['Vitamin D', 'vitaminDMcg', 0],
  ['Calcium', 'calciumMg', 0],
  ['Iron', 'ironMg', 0],
  ['Potassium', 'potassiumMg', 0],
];

/**
 * The label lines of one serving, rounded by 21 CFR 101.9(c) with percent Daily Values from the unrounded amounts.
 * Example: 5.4 g fat gives amount 5 and 7 % DV.
 */
export function labelRows(serving: Totals): LabelRow[] {
  return LINES.map(([name, key, indent]) => {
    if (key === undefined) return { name, indent, atLeast: false, missing: [] };
    const total = serving.of(key);
    const row = { name, key, indent, atLeast: total.atLeast, missing: total.missing };
    if (total.value === undefined) return row;
    const amount = labelAmount(key, total.value);
    const percentDv = percentDailyValue(key, total.value);
    return {
      ...row,
      exact: total.value,
      ...(amount && { amount }),
      ...(percentDv !== undefined && { percentDv }),
    };
  });
}

/**
 * Servings in a package in a label's words: 2 to 5 go to the nearest half, otherwise whole numbers; "about" when
 * rounded (FDA NLEA inspection guide, attachment 6). Example: 3.3 is "about 3.5".
 */
export function servingsPerContainer(servings: number): string {
  const step = servings >= 2 && servings <= 5 ? 0.5 : 1;
  const shown = Math.max(1, Math.floor(servings / step + 0.5) * step);
  return Math.abs(shown - servings) < 1e-9 ? `${shown}` : `about ${shown}`;
}
