import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Food } from '../../src/nutrition/food.ts';
import { type FoodFinder, parseIngredientList } from '../../src/nutrition/ingredient-list.ts';
import { foodOf, milk2, oats, peanutButter, wheyPowder } from '../helpers/foods.ts';

const banana = foodOf('banana', {}, { aliases: ['bananas'], portions: [{ unit: 'medium', massG: 118 }] });
const honey = foodOf('honey', {}, { portions: [{ unit: 'cup', massG: 339 }] });
const salt = foodOf('salt', {}, { portions: [{ unit: 'tsp', massG: 6 }] });
const beans = foodOf(
  'black_beans',
  {},
  {
    portions: [
      { unit: 'can', qualifier: 'drained', massG: 253 },
      { unit: 'cup', massG: 172 },
    ],
  },
);
const foods: readonly Food[] = [oats, peanutButter, milk2, wheyPowder, banana, honey, salt, beans];
const names = new Map(
  foods.flatMap((food) => [food.name, ...food.aliases].map((name) => [name, food] as const)),
);
const finder: FoodFinder = {
  find: (words) => names.get(words.toLowerCase()),
  nearest: (_words, most) => foods.slice(0, most),
};
const read = (text: string) => parseIngredientList(text, finder);
const grams = (text: string) => read(text).counted.map((line) => [line.food.id, Math.round(line.massG)]);

describe('an ingredient list in grams', () => {
  test('goes by the portions of each food', () => {
    expect(grams('2 cups rolled oats, toasted, 1/2 cup honey and a banana')).toEqual([
      ['rolled_oats', 162],
      ['honey', 170],
      ['banana', 118],
    ]);
  });

  test('takes the middle of a range and says so', () => {
    const line = read('2-3 tbsp peanut butter').counted[0];
    expect(line?.massG).toBe(40);
    expect(line?.notes.join()).toContain('the middle, 2.5');
  });

  test('adds two measures of one food', () => {
    expect(grams('1/4 cup plus 2 tbsp honey')).toEqual([['honey', Math.round(339 * (0.25 + 2 / 16))]]);
  });

  test('believes a stated weight, of each or of the line', () => {
    expect(grams('4 scoops (32 g each) whey powder')).toEqual([['whey_powder', 128]]);
    expect(grams('2 cups (170 g) rolled oats')).toEqual([['rolled_oats', 170]]);
    expect(grams('2 (15 oz) cans black beans')).toEqual([['black_beans', 850]]);
  });

  test('takes the drained weight of a drained can where the table has one', () => {
    expect(grams('1 (15 oz) can black beans, drained')).toEqual([['black_beans', 253]]);
  });

  test('takes one of a food written without an amount, and says so', () => {
    const line = read('2 tbsp peanut butter + banana').counted[1];
    expect(line).toMatchObject({ massG: 118, notes: ['no amount was written, so one is counted'] });
  });

  test('passes over words of preparation, never over words that change the food', () => {
    expect(grams('2 ripe bananas, mashed')).toEqual([['banana', 236]]);
    expect(grams('1 cup old-fashioned rolled oats')).toEqual([['rolled_oats', 81]]);
    expect(read('1 cup cashew milk').uncounted[0]?.reason).toBe('unknown_food');
  });

  test('loses nothing: every line is counted or has its reason', () => {
    const list = read('2 cups rolled oats, salt to taste, 3 tbsp unobtainium, honey, 1 stick peanut butter');
    expect(list.counted.map((line) => line.food.id)).toEqual(['rolled_oats']);
    expect(list.uncounted.map((line) => line.reason)).toEqual([
      'left_to_the_cook',
      'unknown_food',
      'no_amount',
      'no_portion',
    ]);
    expect(list.uncounted[1]?.hint).toContain('rolled oats');
  });

  test('knows how each was measured', () => {
    const list = read('200 g rolled oats, 1 scoop whey powder, 1 cup honey, 2 bananas');
    expect(list.counted.map((line) => line.measuredBy)).toEqual([
      'weighed',
      'scooped',
      'levelled',
      'counted',
    ]);
  });

  test('refuses a list nobody would type, and survives anything else', () => {
    expect(() => read('a'.repeat(10_000))).toThrow(/too long/);
    fc.assert(
      fc.property(fc.string({ maxLength: 300, unit: 'grapheme' }), (text) => {
        const list = read(text);
        for (const line of list.counted) expect(Number.isFinite(line.massG)).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  test('reads a hundred lines, and asks for fewer beyond that', () => {
    expect(read('1 cup honey and '.repeat(100)).counted).toHaveLength(100);
    expect(() => read('1 cup honey and '.repeat(101))).toThrow(/too long/);
  });
});
