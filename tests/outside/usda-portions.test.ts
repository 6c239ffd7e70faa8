import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { loadFoods } from '../../src/book/load-foods.ts';
import { massOf } from '../../src/nutrition/portion/mass-of.ts';
import { compareAll, spreadOf } from './compare.ts';
import { PORTION_SAMPLES, RECIPE_SAMPLES } from './samples.ts';
import { type OutsideQuantity, TOLERANCES } from './tolerances.ts';

const recipes = fileURLToPath(new URL('../../recipes', import.meta.url));
const comparison = compareAll(recipes);

describe('figures published by others: USDA SR28 portions and factors, government recipes', () => {
  test('every sample was compared, none was skipped', () => {
    expect(comparison.skipped).toEqual([]);
    const figures = [...PORTION_SAMPLES, ...RECIPE_SAMPLES].map(
      (sample) => Object.keys(sample.figures).length,
    );
    const compared = comparison.deviations.filter((one) => one.quantity !== 'own factors energy');
    expect(compared).toHaveLength(figures.reduce((sum, count) => sum + count, 0));
    expect(spreadOf(comparison.deviations, 'own factors energy').n).toBeGreaterThan(150);
  });

  test.each(Object.keys(TOLERANCES) as OutsideQuantity[])('%s is within its tolerance', (quantity) => {
    const { n, mean, max } = spreadOf(comparison.deviations, quantity);
    expect(n).toBeGreaterThan(0);
    expect(mean).toBeLessThanOrEqual(TOLERANCES[quantity].mean);
    expect(max).toBeLessThanOrEqual(TOLERANCES[quantity].max);
  });
});

describe('household measures of USDA SR28 (WEIGHT file)', () => {
  const foods = [...loadFoods([recipes]).foods.values()];

  test.each(PORTION_SAMPLES)('$ndbNo: $amount $unit is $massG g', ({ ndbNo, amount, unit, massG }) => {
    const food = foods.find((one) => one.source.kind === 'usda_sr28' && one.source.ndbNo === ndbNo);
    if (!food) throw new Error(`no ${ndbNo}`);
    expect(massOf(food, amount, unit).massG).toBeCloseTo(massG, 6);
  });
});
