import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { labelAllows, labelClass } from '../../src/nutrition/label/compliance.ts';
import { servingsPerContainer } from '../../src/nutrition/label/label.ts';
import { labelAmount, labelInterval, roundHalfUp } from '../../src/nutrition/label/rounding.ts';
import type { NutrientKey } from '../../src/nutrition/nutrients.ts';

const printed = (key: NutrientKey, amount: number): string => {
  const label = labelAmount(key, amount);
  return label ? `${label.lessThan ? '<' : ''}${label.shown}` : 'no rule';
};

/** Worked examples of the rounding steps; each row: amounts, and what a label prints. `<1` is "less than 1". */
const EXAMPLES: readonly [source: string, key: NutrientKey, amounts: number[], prints: string[]][] = [
  [
    'W-20: 21 CFR 101.9(c)(1)',
    'energyKcal',
    [4, 4.9, 5, 47, 48, 50, 50.4, 52, 55, 143, 147],
    ['0', '0', '5', '45', '50', '50', '50', '50', '60', '140', '150'],
  ],
  [
    'W-21: 21 CFR 101.9(c)(2)',
    'fatG',
    [0.4, 0.5, 1.2, 1.25, 1.3, 4.74, 4.75, 5.4, 5.5],
    ['0', '0.5', '1', '1.5', '1.5', '4.5', '5', '5', '6'],
  ],
  [
    'W-22: 21 CFR 101.9(c)(3)',
    'cholesterolMg',
    [1.9, 2, 5, 5.1, 7.4, 7.5],
    ['0', '<5', '<5', '5', '5', '10'],
  ],
  [
    'W-23: 21 CFR 101.9(c)(4)',
    'sodiumMg',
    [4, 7, 137, 138, 142, 144, 145, 175],
    ['0', '5', '135', '140', '140', '140', '150', '180'],
  ],
  ['W-24: 21 CFR 101.9(c)(6)', 'carbohydrateG', [0.4, 0.6, 1, 1.5, 26.5], ['0', '<1', '1', '2', '27']],
  ['N-06: 21 CFR 101.9(c)(6)(ii)', 'sugarsG', [0.49, 0.5, 0.99, 1.49], ['0', '<1', '<1', '1']],
  ['N-07: 21 CFR 101.9(c)(7)', 'proteinG', [0.4, 0.7, 21.6], ['0', '<1', '22']],
  ['W-28 and N-12: FDA quantitative declaration, RDI 250 and over', 'calciumMg', [141], ['140']],
  ['W-28 and N-10: same, RDI under 25', 'ironMg', [1.34], ['1.3']],
  ['W-28 and N-11: same, RDI 25 to 250', 'vitaminCMg', [12.6], ['13']],
  ['W-28 and N-12: same (potassium no longer follows sodium)', 'potassiumMg', [253], ['250']],
];

describe('label rounding, 21 CFR 101.9(c) as read in the FDA Food Labeling Guide, Appendix H', () => {
  test.each(EXAMPLES)('%s, %s', (_source, key, amounts, prints) => {
    expect(amounts.map((amount) => printed(key, amount))).toEqual(prints);
  });

  test('exactly half way rounds up, below half rounds down (Appendix H notes)', () => {
    expect([2.5, 2.49, 1.15].map((value) => roundHalfUp(value, value > 2 ? 1 : 0.1))).toEqual([3, 2, 1.2]);
  });

  test('a nutrient labels do not carry has no printed figure', () => {
    expect(labelAmount('leucineG', 2)).toBeUndefined();
    expect(labelAmount('proteinG', Number.NaN)).toBeUndefined();
  });

  test('W-37: 3.3 servings are "about 3.5" (FDA NLEA inspection guide, attachment 6)', () => {
    expect([3.3, 4, 5.4, 1, 7.5].map(servingsPerContainer)).toEqual([
      'about 3.5',
      '4',
      'about 5',
      '1',
      'about 8',
    ]);
  });
});

describe('what stands behind a printed figure', () => {
  test('is the interval the rounding rule leaves open', () => {
    expect(labelInterval('proteinG', 24)).toEqual({ low: 23.5, high: 24.5 });
    expect(labelInterval('energyKcal', 120)).toEqual({ low: 115, high: 125 });
    expect(labelInterval('energyKcal', 50)).toEqual({ low: 47.5, high: 55 });
    expect(labelInterval('fatG', 5)).toEqual({ low: 4.75, high: 5.5 });
    expect(labelInterval('sodiumMg', 0)).toEqual({ low: 0, high: 5 });
    expect(labelInterval('sugarsG', 0.5)).toEqual({ low: 0.5, high: 0.5 });
    expect(labelInterval('sugarsG', 0.8)).toEqual({ low: 0.5, high: 1 });
    expect(labelInterval('fatG', 1.3)).toEqual({ low: 1.3, high: 1.3 });
  });

  test('holds the amount that was printed, whatever the amount', () => {
    const keys: NutrientKey[] = ['energyKcal', 'fatG', 'sodiumMg', 'carbohydrateG', 'calciumMg', 'ironMg'];
    fc.assert(
      fc.property(fc.constantFrom(...keys), fc.double({ min: 0, max: 900, noNaN: true }), (key, amount) => {
        const label = labelAmount(key, amount);
        if (!label || label.lessThan) return;
        const interval = labelInterval(key, label.shown);
        expect(interval?.low).toBeLessThanOrEqual(amount + 1e-6);
        expect(interval?.high).toBeGreaterThanOrEqual(amount - 1e-6);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('how far a package may be from its label, 21 CFR 101.9(g)', () => {
  test('W-33: 20 g natural protein passes at 16.0 g and fails at 15.9 g', () => {
    expect(labelClass('proteinG')).toBe('natural');
    expect(labelAllows('natural', 20).least).toBeCloseTo(16, 9);
  });

  test('W-34: 200 kcal passes at 240 and fails at 241', () => {
    expect(labelClass('energyKcal')).toBe('limited');
    expect(labelAllows('limited', 200).most).toBeCloseTo(240, 9);
  });

  test('W-35: 100 mg added vitamin C fails at 99 mg', () => {
    expect(labelAllows('added', 100).least).toBe(100);
  });
});
