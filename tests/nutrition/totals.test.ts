import { describe, expect, test } from 'vitest';
import { NUTRIENTS } from '../../src/nutrition/nutrients.ts';
import { Problem } from '../../src/nutrition/problem.ts';
import { per100g, perPiece, recipeTotals } from '../../src/nutrition/recipe-totals.ts';
import { isAtLeast, tallied, tally, totals } from '../../src/nutrition/totals.ts';
import {
  foodOf,
  foodsOf,
  lineOf,
  milk2,
  oats,
  peanutButter,
  recipeOf,
  wheyPowder,
} from '../helpers/foods.ts';

describe('totals', () => {
  test('add food by food, by mass', () => {
    const sum = totals([
      { food: oats, massG: 81 },
      { food: peanutButter, massG: 16 },
    ]);
    expect(sum.of('energyKcal').value).toBeCloseTo(306.99 + 95.68, 6);
    expect(sum.massG).toBe(97);
  });

  test('over a food without a figure are "at least" and name it once', () => {
    const leucine = totals([
      { food: wheyPowder, massG: 30 },
      { food: oats, massG: 40 },
      { food: wheyPowder, massG: 30 },
    ]).of('leucineG');
    expect(leucine.value).toBeCloseTo(0.392, 6);
    expect(leucine.atLeast).toBe(true);
    expect(leucine.missing).toEqual([wheyPowder]);
  });

  test('nobody measured is not zero', () => {
    expect(totals([{ food: wheyPowder, massG: 30 }]).of('leucineG').value).toBeUndefined();
    expect(totals([{ food: milk2, massG: 100 }]).of('fiberG')).toMatchObject({ value: 0, atLeast: false });
  });

  test('a food of which there is none takes no figure away', () => {
    const sum = totals([
      { food: oats, massG: 40 },
      { food: wheyPowder, massG: 0 },
    ]);
    expect(sum.of('leucineG').atLeast).toBe(false);
  });

  test('a figure that is no number is unknown, and never spreads', () => {
    const broken = foodOf('broken', { proteinG: Number.NaN, energyKcal: 10 });
    const protein = totals([
      { food: broken, massG: 100 },
      { food: oats, massG: 100 },
    ]).of('proteinG');
    expect(protein.value).toBeCloseTo(13.15, 9);
    expect(protein).toMatchObject({ atLeast: true, missing: [broken] });
  });

  test('refuse a mass that is no mass', () => {
    for (const massG of [-1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => totals([{ food: oats, massG }])).toThrow(Problem);
    }
  });

  test('do not change what they were given', () => {
    const amounts = Object.freeze([Object.freeze({ food: oats, massG: 10 })]);
    const sum = totals(amounts);
    sum.times(3).of('proteinG');
    expect(sum.of('proteinG').value).toBeCloseTo(1.315, 9);
  });

  test('agree with the bulk tally on every nutrient', () => {
    const mix = [
      { food: oats, massG: 80 },
      { food: wheyPowder, massG: 30 },
    ];
    const bulk = tally(mix);
    for (const { key } of NUTRIENTS) {
      const named = totals(mix).of(key);
      expect(tallied(bulk, key)).toBe(named.value);
      expect(isAtLeast(bulk, key)).toBe(named.atLeast);
    }
  });
});

describe('recipe totals', () => {
  const foods = foodsOf(oats, peanutButter);
  const bars = recipeOf('oat_bar', [lineOf(oats, 400), lineOf(peanutButter, 200)]);

  test('follow the cut', () => {
    const whole = recipeTotals(bars, foods);
    const eight = perPiece(whole).totals.of('proteinG').value ?? 0;
    expect(eight).toBeCloseTo((400 * 0.1315 + 200 * 0.2221) / 8, 9);
    expect(perPiece(whole, 10).totals.of('proteinG').value).toBeCloseTo((eight * 8) / 10, 9);
    expect(perPiece(whole, 10).pieceMassG).toBe(60);
  });

  test('keep nutrients when water leaves in the oven, in a lighter piece', () => {
    const baked = recipeTotals({ ...bars, moistureLoss: 0.1 }, foods);
    expect(perPiece(baked).totals.of('proteinG').value).toBe(
      perPiece(recipeTotals(bars, foods)).totals.of('proteinG').value,
    );
    expect(perPiece(baked).pieceMassG).toBeCloseTo(67.5, 9);
    expect(per100g(baked).of('proteinG').value).toBeCloseTo((400 * 0.1315 + 200 * 0.2221) / 5.4, 9);
  });

  test('lose a share of everything to the bowl', () => {
    const sticky = perPiece(recipeTotals({ ...bars, handlingLoss: 0.02 }, foods));
    expect(sticky.pieceMassG).toBeCloseTo(73.5, 9);
    expect(sticky.totals.of('energyKcal').value).toBeCloseTo(((4 * 379 + 2 * 598) * 0.98) / 8, 9);
  });

  test('refuse a cut that is none', () => {
    const whole = recipeTotals(bars, foods);
    for (const pieces of [0, -3, 2.5, Number.NaN]) expect(() => perPiece(whole, pieces)).toThrow(Problem);
  });

  test('name a food that the kitchen lacks', () => {
    expect(() => recipeTotals(bars, foodsOf(oats))).toThrow(/peanut_butter/);
  });
});
