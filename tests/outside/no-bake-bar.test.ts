import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { loadFoods } from '../../src/book/load-foods.ts';
import { type MeasuredAmount, rangeOf } from '../../src/nutrition/certainty/range.ts';
import type { Food } from '../../src/nutrition/food.ts';
import { massOf } from '../../src/nutrition/portion/mass-of.ts';
import type { MeasuredBy } from '../../src/nutrition/recipe.ts';
import { totals } from '../../src/nutrition/totals.ts';

const table = [...loadFoods([fileURLToPath(new URL('../../recipes', import.meta.url))]).foods.values()];

function usda(ndbNo: string): Food {
  const food = table.find((one) => one.source.kind === 'usda_sr28' && one.source.ndbNo === ndbNo);
  if (!food) throw new Error(`the food table lacks ${ndbNo}`);
  return food;
}

const line = (ndbNo: string, amount: number, unit: string, measuredBy: MeasuredBy): MeasuredAmount => {
  const food = usda(ndbNo);
  return { food, massG: massOf(food, amount, unit).massG, measuredBy };
};

/** 2 cups rolled oats, 4 scoops of 30 g protein powder, 1/2 cup 2 % milk, 3 tablespoons peanut butter; six bars. */
const mix: readonly MeasuredAmount[] = [
  line('08120', 2, 'cup', 'levelled'),
  line('14066', 4 * 30, 'g', 'scooped'),
  line('01079', 1 / 2, 'cup', 'levelled'),
  line('16098', 3, 'tbsp', 'levelled'),
];
const bar = totals(mix).times(1 / 6);

describe('a four-ingredient no-bake bar, cut into six', () => {
  test('gives 200 to 250 kcal and at least 20 g protein (common practice, no source)', () => {
    expect(bar.of('energyKcal').value).toBeGreaterThanOrEqual(200);
    expect(bar.of('energyKcal').value).toBeLessThanOrEqual(250);
    expect(bar.of('proteinG').value).toBeGreaterThanOrEqual(20);
  });

  test('gives 230.7 kcal and 21.6 g protein (USDA SR28, worked by hand)', () => {
    expect(bar.of('energyKcal').value).toBeCloseTo(230.7, 1);
    expect(bar.of('proteinG').value).toBeCloseTo(21.6, 1);
    expect(bar.of('proteinG').atLeast).toBe(false);
  });

  test('may miss 20 g by cup and scoop and holds it weighed: the range says so', () => {
    const part = { factor: 1 / 6, cut: true };
    expect(rangeOf(mix, 'proteinG', 'cup_and_spoon', part)?.low).toBeLessThan(20.5);
    expect(rangeOf(mix, 'proteinG', 'weighed', part)?.low).toBeGreaterThan(20);
  });

  test('has leucine "at least": USDA has no figure for the powder', () => {
    expect(bar.of('leucineG')).toMatchObject({ atLeast: true, missing: [usda('14066')] });
  });
});
