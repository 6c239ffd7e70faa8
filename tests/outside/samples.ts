import type { NutrientKey } from '../../src/nutrition/nutrients.ts';

/** A household measure of one USDA food with its published grams and figures. */
export interface PortionSample {
  readonly ndbNo: string;
  readonly amount: number;
  readonly unit: string;
  readonly massG: number;
  readonly figures: { readonly [K in NutrientKey]?: number };
}

const portion = (
  ndbNo: string,
  amount: number,
  unit: string,
  massG: number,
  [energyKcal, proteinG, fatG, carbohydrateG, calciumMg, sodiumMg]: readonly [
    number,
    number,
    number,
    number,
    number,
    number,
  ],
): PortionSample => ({
  ndbNo,
  amount,
  unit,
  massG,
  figures: { energyKcal, proteinG, fatG, carbohydrateG, calciumMg, sodiumMg },
});

/** USDA National Nutrient Database for Standard Reference, Release 28 (2015): NUT_DATA times WEIGHT, 2 decimals. */
export const PORTION_SAMPLES: readonly PortionSample[] = [
  portion('08120', 1, 'cup', 81, [306.99, 10.65, 5.28, 54.84, 42.12, 4.86]),
  portion('16098', 1, 'tbsp', 16, [95.68, 3.55, 8.22, 3.57, 7.84, 68.16]),
  portion('01079', 1, 'cup', 244, [122, 8.05, 4.83, 11.71, 292.8, 114.68]),
  portion('01077', 1, 'cup', 244, [148.84, 7.69, 7.93, 11.71, 275.72, 104.92]),
  portion('01085', 1, 'cup', 245, [83.3, 8.26, 0.2, 12.15, 298.9, 102.9]),
  portion('14066', 30, 'g', 30, [105.6, 23.44, 0.47, 1.88, 140.7, 46.8]),
  portion('12195', 1, 'tbsp', 16, [98.24, 3.35, 8.88, 3.01, 55.52, 1.12]),
  portion('12040', 1, 'tbsp', 16, [98.72, 2.76, 8.83, 3.73, 10.24, 0.48]),
  portion('16139', 1, 'cup', 243, [104.49, 6.32, 3.57, 11.96, 298.89, 114.21]),
  portion('16222', 1, 'cup', 243, [80.19, 6.95, 3.91, 4.23, 301.32, 89.91]),
  portion('14091', 1, 'cup', 262, [39.3, 1.55, 2.88, 1.52, 516.14, 186.02]),
  portion('14016', 1, 'cup', 240, [91.2, 1.01, 2.5, 15.82, 451.2, 151.2]),
];

/** A published recipe with what it prints per serving. */
export interface RecipeSample {
  readonly source: string;
  readonly servings: number;
  /** USDA number and grams or measure of each line. */
  readonly lines: readonly { readonly ndbNo: string; readonly amount: number; readonly unit: string }[];
  readonly figures: { readonly [K in NutrientKey]?: number };
}

const GRANOLA_25: RecipeSample['lines'] = [
  { ndbNo: '19334', amount: 2, unit: 'oz' },
  { ndbNo: '19296', amount: 10.25, unit: 'tsp' },
  { ndbNo: '09016', amount: 0.5, unit: 'cup' },
  { ndbNo: '04582', amount: 5, unit: 'tsp' },
  { ndbNo: '02047', amount: 0.5, unit: 'tsp' },
  { ndbNo: '02010', amount: 1.5, unit: 'tsp' },
  { ndbNo: '02050', amount: 2, unit: 'tsp' },
  { ndbNo: '08120', amount: 15, unit: 'oz' },
  { ndbNo: '12179', amount: 2, unit: 'oz' },
];

/**
 * Government recipes. The figures are those ICN prints for its page of the granola whose lines USDA prints, taken to
 * be one recipe. Amounts are the printed weights where there are weights, else the printed measures; the
 * 50-serving column is twice the first, line by line (standardized granola, USDA Recipes for Child Care, 25 and 50).
 */
export const RECIPE_SAMPLES: readonly RecipeSample[] = [
  {
    source:
      'USDA and ICN granola, 25 servings of 1 oz: printed 107 kcal, 3 g protein, 17 g carbohydrate, 3 g fat',
    servings: 25,
    lines: GRANOLA_25,
    figures: { energyKcal: 107, proteinG: 3, carbohydrateG: 17, fatG: 3 },
  },
  {
    source: 'the same, 50 servings, every line doubled: the same figures a serving',
    servings: 50,
    lines: GRANOLA_25.map((line) => ({ ...line, amount: line.amount * 2 })),
    figures: { energyKcal: 107, proteinG: 3, carbohydrateG: 17, fatG: 3 },
  },
];
