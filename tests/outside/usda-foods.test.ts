import { describe, expect, test } from 'vitest';
import { loadFoods } from '../../src/book/load-foods.ts';
import type { Portion } from '../../src/nutrition/food.ts';
import type { NutrientKey } from '../../src/nutrition/nutrients.ts';

// Source of all figures here: US Department of Agriculture, Agricultural Research Service, Nutrient Data Laboratory,
// USDA National Nutrient Database for Standard Reference, Release 28 (2015), files NUT_DATA and WEIGHT. Per 100 g.
const COLUMNS: readonly NutrientKey[] = [
  'energyKcal',
  'proteinG',
  'fatG',
  'carbohydrateG',
  'fiberG',
  'sugarsG',
  'calciumMg',
  'ironMg',
  'sodiumMg',
  'leucineG',
];

type Anchor = readonly [ndbNo: string, id: string, ...figures: readonly (number | undefined)[]];
// biome-ignore format: one row a food
const ANCHORS: readonly Anchor[] = [
  ['01001', 'butter', 717, 0.85, 81.11, 0.06, 0, 0.06, 24, 0.02, 643, 0.083],
  ['01009', 'cheddar', 404, 22.87, 33.31, 3.09, 0, 0.48, 710, 0.14, 653, 1.939],
  ['01012', 'cottage-cheese', 98, 11.12, 4.3, 3.38, 0, 2.67, 83, 0.07, 364, 1.116],
  ['01079', 'milk-2', 50, 3.3, 1.98, 4.8, 0, 5.06, 120, 0.02, 47, 0.313],
  ['01085', 'milk-skim', 34, 3.37, 0.08, 4.96, 0, 5.09, 122, 0.03, 42, 0.319],
  ['01123', 'egg', 143, 12.56, 9.51, 0.72, 0, 0.37, 56, 1.75, 142, 1.086],
  ['01124', 'egg-white', 52, 10.9, 0.17, 0.73, 0, 0.71, 7, 0.08, 166, 1.016],
  ['01256', 'greek-yogurt', 59, 10.19, 0.39, 3.6, 0, 3.24, 110, 0.07, 36, undefined],
  ['02047', 'salt', 0, 0, 0, 0, 0, 0, 24, 0.33, 38758, 0],
  ['04053', 'olive-oil', 884, 0, 100, 0, 0, 0, 1, 0.56, 2, 0],
  ['04582', 'canola-oil', 884, 0, 100, 0, 0, 0, 0, 0, 0, undefined],
  ['05064', 'chicken-breast', 165, 31.02, 3.57, 0, 0, 0, 15, 1.04, 74, 2.328],
  ['08120', 'rolled-oats', 379, 13.15, 6.52, 67.7, 10.1, 0.99, 52, 4.25, 6, 0.98],
  ['08156', 'puffed-rice', 402, 6.3, 0.5, 89.8, 1.7, undefined, 6, 31.7, 3, 0.526],
  ['09003', 'apple', 52, 0.26, 0.17, 13.81, 2.4, 10.39, 6, 0.12, 1, 0.013],
  ['09040', 'banana', 89, 1.09, 0.33, 22.84, 2.6, 12.23, 5, 0.26, 1, 0.068],
  ['09050', 'blueberries', 57, 0.74, 0.33, 14.49, 2.4, 9.96, 6, 0.28, 1, 0.044],
  ['09087', 'dates', 282, 2.45, 0.39, 75.03, 8, 63.35, 39, 1.02, 2, 0.084],
  ['09298', 'raisins', 299, 3.07, 0.46, 79.18, 3.7, 59.19, 50, 1.88, 11, 0.096],
  ['09316', 'strawberries', 32, 0.67, 0.3, 7.68, 2, 4.89, 16, 0.41, 1, 0.034],
  ['09421', 'dates-medjool', 277, 1.81, 0.15, 74.97, 6.7, 66.47, 64, 0.9, 1, 0.082],
  ['11424', 'pumpkin-canned', 34, 1.1, 0.28, 8.09, 2.9, 3.3, 26, 1.39, 5, 0.051],
  ['11457', 'spinach', 23, 2.86, 0.39, 3.63, 2.2, 0.42, 99, 2.71, 79, 0.223],
  ['12006', 'chia-seeds', 486, 16.54, 30.74, 42.12, 34.4, undefined, 631, 7.72, 16, 1.371],
  ['12040', 'sunflower-butter', 617, 17.28, 55.2, 23.32, 5.7, 10.54, 64, 4.12, 3, 1.315],
  ['12061', 'almonds', 579, 21.15, 49.93, 21.55, 12.5, 4.35, 269, 3.71, 1, 1.473],
  ['12155', 'walnuts', 654, 15.23, 65.21, 13.71, 6.7, 2.61, 98, 2.91, 2, 1.17],
  ['12166', 'tahini', 595, 17, 53.76, 21.19, 9.3, 0.49, 426, 8.95, 115, 1.302],
  ['12195', 'almond-butter', 614, 20.96, 55.5, 18.82, 10.3, 4.43, 347, 3.49, 7, 1.483],
  ['12220', 'flaxseed', 534, 18.29, 42.16, 28.88, 27.3, 1.55, 255, 5.73, 30, 1.235],
  ['14066', 'whey-generic', 352, 78.13, 1.56, 6.25, 3.1, 0, 469, 1.13, 156, undefined],
  ['14091', 'almond-milk', 15, 0.59, 1.1, 0.58, 0, 0, 197, 0.35, 71, undefined],
  ['15121', 'tuna-light', 86, 19.44, 0.96, 0, 0, 0, 17, 1.63, 247, 1.514],
  ['16087', 'peanuts-raw', 567, 25.8, 49.24, 16.13, 8.5, 4.72, 92, 4.58, 18, 1.672],
  ['16098', 'peanut-butter', 598, 22.21, 51.36, 22.31, 5, 10.49, 49, 1.74, 426, 1.546],
  ['16122', 'soy-protein-isolate', 335, 88.32, 3.39, 0, 0, 0, 178, 14.5, 1005, 6.783],
  ['16139', 'soy-milk', 43, 2.6, 1.47, 4.92, 0.2, 3.65, 123, 0.42, 47, 0.107],
  ['16158', 'hummus', 166, 7.9, 9.6, 14.29, 6, undefined, 38, 2.44, 379, undefined],
  ['18069', 'white-bread', 266, 8.85, 3.33, 49.42, 2.7, 5.67, 144, 3.61, 490, undefined],
  ['18363', 'corn-tortilla', 218, 5.7, 2.85, 44.64, 6.3, 0.88, 81, 1.23, 45, 0.711],
  ['19080', 'chocolate-chips', 480, 4.2, 30, 63.9, 5.9, 54.5, 32, 3.13, 11, 0.257],
  ['19165', 'cocoa', 228, 19.6, 13.7, 57.9, 37, 1.75, 128, 13.86, 21, 1.189],
  ['19296', 'honey', 304, 0.3, 0, 82.4, 0.2, 82.12, 6, 0.42, 4, 0.01],
  ['19334', 'brown-sugar', 380, 0.12, 0, 98.09, 0, 97.02, 83, 0.71, 28, undefined],
  ['19353', 'maple-syrup', 260, 0.04, 0.06, 67.04, 0, 60.46, 102, 0.11, 12, undefined],
  ['20033', 'oat-bran', 246, 17.3, 7.03, 66.22, 15.4, 1.45, 58, 5.41, 4, 1.374],
  ['20081', 'flour', 364, 10.33, 0.98, 76.31, 2.7, 0.27, 15, 4.64, 2, 0.71],
  ['20137', 'quinoa-cooked', 120, 4.4, 1.92, 21.3, 2.8, 0.87, 17, 1.49, 7, 0.261],
  ['23562', 'ground-beef', 176, 20, 10, 0, 0, 0, 12, 2.24, 66, 1.56],
];

/** Measures of WEIGHT.txt, amount divided out. */
// biome-ignore format: one row a measure
const MEASURES: readonly (readonly [id: string, unit: string, qualifier: string | undefined, massG: number])[] = [
  ['rolled-oats', 'cup', undefined, 81],
  ['peanut-butter', 'tbsp', undefined, 32 / 2],
  ['peanut-butter', 'cup', undefined, 258],
  ['milk-2', 'cup', undefined, 244],
  ['milk-skim', 'cup', undefined, 245],
  ['whey-isolate-generic', 'scoop', undefined, 86 / 3],
  ['almond-butter', 'tbsp', undefined, 16],
  ['sunflower-butter', 'tbsp', undefined, 16],
  ['soy-milk', 'cup', undefined, 243],
  ['almond-milk', 'cup', undefined, 262],
  ['almond-milk-vanilla', 'cup', undefined, 240],
  ['honey', 'tbsp', undefined, 21],
  ['egg', 'large', undefined, 50],
  ['brown-sugar', 'cup', 'packed', 220],
  ['cherries-tart-dried', 'cup', undefined, 40 / 0.25],
  ['hemp-seeds', 'tbsp', undefined, 30 / 3],
  ['blueberries', 'berry', undefined, 68 / 50],
  ['chocolate-chips', 'cup', 'chips', 168],
];

const { foods } = loadFoods(['recipes']);

describe('the food table beside USDA SR28', () => {
  test.each(ANCHORS)('%s %s has the figures USDA printed', (ndbNo, id, ...figures) => {
    const food = foods.get(String(id));
    expect(food?.source).toMatchObject({ kind: 'usda_sr28', ndbNo });
    expect(COLUMNS.map((key) => food?.per100g[key])).toEqual(figures);
  });

  test.each(MEASURES)('one %s %s (%s) weighs what USDA weighed', (id, unit, qualifier, massG) => {
    const same = (portion: Portion) => portion.unit === unit && portion.qualifier === qualifier;
    expect(foods.get(id)?.portions.find(same)?.massG).toBeCloseTo(massG, 2);
  });

  test('USDA having no value is not the same as zero', () => {
    expect(foods.get('whey-generic')?.per100g.leucineG).toBeUndefined();
    expect(foods.get('almond-milk')?.per100g.leucineG).toBeUndefined();
    expect(foods.get('milk-2')?.per100g.fiberG).toBe(0);
  });

  test('energy comes back from the specific factors of Handbook 74 wherever a food has them', () => {
    const withFactors = [...foods.values()].filter((food) => food.energyFactors);
    expect(withFactors.length).toBeGreaterThan(200);
    for (const { id, energyFactors, per100g } of withFactors) {
      const { proteinG = NaN, fatG = NaN, carbohydrateG = NaN, energyKcal = NaN } = per100g;
      const factors = energyFactors ?? { protein: NaN, fat: NaN, carbohydrate: NaN };
      const kcal = proteinG * factors.protein + fatG * factors.fat + carbohydrateG * factors.carbohydrate;
      expect(Math.abs(kcal - energyKcal), id).toBeLessThanOrEqual(Math.max(1, 0.004 * energyKcal));
    }
  });

  test('each USDA number is used once and keeps its leading zero', () => {
    const numbers = [...foods.values()].flatMap(({ source }) =>
      source.kind === 'usda_sr28' ? [source.ndbNo] : [],
    );
    expect(numbers).toHaveLength(332);
    expect(new Set(numbers).size).toBe(332);
    expect(numbers.every((ndbNo) => /^\d{5}$/.test(ndbNo))).toBe(true);
  });
});
