import { describe, expect, test } from 'vitest';
import { afrsPounds, guideOunces, guideTeaspoons } from '../../src/nutrition/measure/published-rounding.ts';
import { volumeMeasure } from '../../src/nutrition/measure/volume-measure.ts';
import type { Pan } from '../../src/nutrition/recipe.ts';
import { gridOf } from '../../src/nutrition/scale/cut-grid.ts';
import { findPan, panArea } from '../../src/nutrition/scale/pans.ts';
import { scaleRecipe } from '../../src/nutrition/scale/scale-recipe.ts';
import { FOODS, TEST_BAR } from '../helpers/scaled-recipes.ts';

const CUP = 48;
const TBSP = 3;

describe('Armed Forces Recipe Service, TM 10-412 (2003), card A-1(2)', () => {
  test('1 lb 4 oz and 2 lb 10 oz are 1.25 and 2.63 decimal pounds (W-03, table)', () => {
    expect(Math.round((1 + 4 / 16) * 100) / 100).toBe(1.25);
    expect(afrsPounds(1.25)).toEqual({ pounds: 1, ounces: 4 });
    expect(afrsPounds(2.63)).toEqual({ pounds: 2, ounces: 10 });
  });

  test('348 portions of a recipe for 100 with 1.25 lb: 4.35 lb, 4 lb 5 1/2 oz (W-04)', () => {
    expect(afrsPounds(1.25 * 3.48)).toEqual({ pounds: 4, ounces: 5.5 });
  });

  test('2 lb of cornstarch by 2.61: 5 lb 3 1/2 oz (W-06, NAVEDTRA 14163 and the same bands)', () => {
    expect(afrsPounds(2 * 2.61)).toEqual({ pounds: 5, ounces: 3.5 });
  });

  test.each([
    [0.12, 0],
    [0.13, 0.25],
    [0.37, 0.25],
    [0.38, 0.5],
    [0.62, 0.5],
    [0.63, 0.75],
    [0.87, 0.75],
    [0.88, 1],
  ])('an ounce remainder of %f goes to %f (U-45)', (remainder, ounces) => {
    expect(afrsPounds(1 + (3 + remainder) / 16)).toEqual({ pounds: 1, ounces: 3 + ounces });
  });
});

describe('Navy Mess Management Specialist manual, NAVEDTRA 14163', () => {
  test('6 gal of water by 3.33 is 19.98 gal; the measure keeps within 1 % (W-05)', () => {
    const tsp = 6 * 3.33 * 768;
    const measure = volumeMeasure(tsp, 0.03);
    expect(measure?.text).toMatch(/^(?:20 gal|19 gal \+ 3 qt)/);
    expect(Math.abs((measure?.tsp ?? 0) / tsp - 1)).toBeLessThan(0.01);
  });
});

describe('USDA granola for CACFP, 25 and 50 servings (published columns, W-10, W-11)', () => {
  test.each<[string, number, number]>([
    ['canola oil 1 Tbsp 2 tsp', TBSP + 2, 3 * TBSP + 1],
    ['salt 1/2 tsp', 0.5, 1],
    ['cinnamon 1 1/2 tsp', 1.5, TBSP],
    ['vanilla 2 tsp', 2, TBSP + 1],
    ['apple juice 1/2 cup', 0.5 * CUP, CUP],
    ['rolled oats 1 qt 1 2/3 cups', (5 + 2 / 3) * CUP, (11 + 1 / 3) * CUP],
    ['honey 1/8 cup 1 Tbsp 1 1/4 tsp', 2 * TBSP + TBSP + 1.25, 4 * TBSP + 2 * TBSP + 2.5],
  ])('%s doubles to what the page prints', (_, tsp, printedTsp) => {
    expect(tsp * 2).toBeCloseTo(printedTsp, 9);
    expect(volumeMeasure(tsp * 2, 0.0001)?.tsp).toBeCloseTo(printedTsp, 9);
  });

  test('the oats read 2 qt + 3 1/3 cups', () => {
    expect(volumeMeasure((5 + 2 / 3) * CUP * 2, 0.03)?.text).toBe('2 qt + 3 1/3 cups');
  });

  test('25 scoops of No. 24 are 4 1/6 cups; the page prints about 1 qt 1/8 cup, within 2 % (W-12)', () => {
    const tsp = 25 * (192 / 24);
    expect(tsp / CUP).toBeCloseTo(4 + 1 / 6, 12);
    expect(Math.abs(4.125 / (tsp / CUP) - 1)).toBeLessThan(0.02);
  });
});

describe('ICN rounding guide for weights and measures (U-47, U-47b), 25 to 60 servings (W-13, derived)', () => {
  test.each([
    [36, 36],
    [4.8, 4.75],
    [9.4, 9.5],
    [14.3, 14.5],
    [3 * 16 + 6.7, 3 * 16 + 7],
    [6 * 16 + 5, 6.25 * 16],
  ])('%f oz is rounded to %f oz (W-13, W-18)', (ounces, rounded) => {
    expect(guideOunces(ounces)).toBe(rounded);
  });

  test.each<[string, number, number]>([
    ['oil', 12, 12],
    ['honey', 24.6, 0.5 * CUP + 1],
    ['cinnamon', 3.6, TBSP + 0.5],
    ['salt', 1.2, 1.25],
    ['vanilla', 4.8, TBSP + 1.75],
  ])('%s: %f tsp is rounded to %f tsp', (_, tsp, rounded) => {
    expect(guideTeaspoons(tsp)).toBeCloseTo(rounded, 9);
  });
});

describe('USDA fruity oatmeal, 50 to 100 servings (published columns, W-14)', () => {
  test.each([
    ['low-fat milk 1 gal 1 qt 1/2 cup', 20.5, 41],
    ['water 2 qt', 8, 16],
  ])('%s doubles to what the page prints, in cups', (_, cups, printed) => {
    expect(volumeMeasure(cups * 2 * CUP, 0.0001)?.tsp).toBeCloseTo(printed * CUP, 9);
  });
});

describe('pans and cuts', () => {
  const squares: Pan = { id: '12x10', name: '12 x 10 in pan', lengthIn: 12, widthIn: 10, depthIn: 2.5 };
  const recipe = { ...TEST_BAR, yieldPieces: 25, pan: squares, cut: { rows: 5, columns: 5 } };

  test('a 12 x 10 in pan cut 5 x 5 gives pieces of 2.4 x 2 in (W-15, USDA muffin squares)', () => {
    expect(gridOf(5, 5, 12, 10, 0)).toMatchObject({ pieceLengthIn: 2.4, pieceWidthIn: 2 });
    expect(scaleRecipe(recipe, FOODS, { kind: 'pieces', pieces: 50 }).slabs).toMatchObject({
      pans: 2,
      sparePlaces: 0,
    });
    expect(scaleRecipe(recipe, FOODS, { kind: 'pieces', pieces: 100 }).slabs?.pans).toBe(4);
  });

  test('60 squares take 3 pans with 15 places spare (W-16: U-49, whole pans)', () => {
    expect(scaleRecipe(recipe, FOODS, { kind: 'pieces', pieces: 60 }).slabs).toMatchObject({
      pans: 3,
      sparePlaces: 15,
    });
  });

  test('half sheet to full sheet is x 2, to quarter sheet x 1/2 (W-17: U-38, nominal areas)', () => {
    const [full, half, quarter] = ['full sheet', 'half sheet', 'quarter sheet'].map((name) =>
      panArea(findPan(name, [])),
    );
    expect([full, half, quarter]).toEqual([468, 234, 117]);
  });
});
