import { describe, expect, test } from 'vitest';
import { atwaterCheck, atwaterKcal, energyShares, GENERAL_FACTORS } from '../../src/nutrition/energy.ts';
import { labelAmount } from '../../src/nutrition/label/rounding.ts';
import { totals } from '../../src/nutrition/totals.ts';
import { foodOf, milk2, oats, peanutButter } from '../helpers/foods.ts';

/** USDA SR28: name, stated kcal, protein, fat, carbohydrate g per 100 g, factors protein / fat / carbohydrate. */
const SR28: readonly [string, number, number, number, number, number, number, number][] = [
  ['09040 bananas, raw', 89, 1.09, 0.33, 22.84, 3.36, 8.37, 3.6],
  ['19296 honey', 304, 0.3, 0, 82.4, 3.36, 8.37, 3.68],
];

describe('Atwater energy', () => {
  test.each([oats, peanutButter, milk2])(
    'USDA SR28: $name, by the factors of its record, is its stated energy',
    (food) => {
      const check = atwaterCheck(food);
      expect(check?.basis).toBe('own_factors');
      expect(Math.abs(check?.differenceKcal ?? Number.NaN)).toBeLessThan(0.5);
    },
  );

  test.each(SR28)(
    'USDA SR28: %s',
    (_name, kcal, proteinG, fatG, carbohydrateG, protein, fat, carbohydrate) => {
      const worked = atwaterKcal({ proteinG, fatG, carbohydrateG }, { protein, fat, carbohydrate });
      expect(Math.abs((worked ?? Number.NaN) - kcal)).toBeLessThan(0.6);
    },
  );

  test('USDA SR28: 4-4-9 is 7 % off for peanut butter, so it never replaces a stated energy', () => {
    expect(((atwaterKcal(peanutButter.per100g) ?? 0) / 598 - 1) * 100).toBeCloseTo(7.1, 1);
  });

  test('W-31: 3 g protein, 3 g fat, 17 g carbohydrate are 107 kcal and print 110 (21 CFR 101.9(c)(1)(i)(B))', () => {
    const kcal = atwaterKcal({ proteinG: 3, fatG: 3, carbohydrateG: 17 }, GENERAL_FACTORS);
    expect(kcal).toBe(107);
    expect(labelAmount('energyKcal', kcal ?? 0)?.shown).toBe(110);
  });

  test('W-32: 3 / 3 / 27 g give 147 kcal where 143 is printed, inside what rounding leaves open', () => {
    expect(atwaterKcal({ proteinG: 3, fatG: 3, carbohydrateG: 27 })).toBe(147);
    const least = atwaterKcal({ proteinG: 2.5, fatG: 2.75, carbohydrateG: 26.5 }) ?? 0;
    expect(least).toBeLessThan(143);
  });

  test('is not worked out from missing grams', () => {
    expect(atwaterKcal({ proteinG: 3, fatG: 3 })).toBeUndefined();
    expect(atwaterCheck(foodOf('no_energy', { proteinG: 1, fatG: 1, carbohydrateG: 1 }))).toBeUndefined();
  });
});

describe('share of energy', () => {
  test('adds to the whole on a 4-4-9 basis', () => {
    const shares = energyShares(totals([{ food: milk2, massG: 244 }]));
    expect(shares?.carbohydrate).toBeCloseTo((4.8 * 4) / 50.22, 6);
    expect((shares?.carbohydrate ?? 0) + (shares?.protein ?? 0) + (shares?.fat ?? 0)).toBeCloseTo(1, 12);
  });

  test('is not given over an unknown', () => {
    const half = foodOf('half_known', { proteinG: 5, fatG: 5 });
    expect(energyShares(totals([{ food: half, massG: 10 }]))).toBeUndefined();
  });
});
