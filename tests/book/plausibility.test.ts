import { describe, expect, test } from 'vitest';
import { implausible } from '../../src/book/plausibility.ts';
import type { Nutrients } from '../../src/nutrition/nutrients.ts';

const OATS: Nutrients = {
  waterG: 10.84,
  proteinG: 13.15,
  fatG: 6.52,
  carbohydrateG: 67.7,
  fiberG: 10.1,
  energyKcal: 379,
};

describe('figures that cannot be right', () => {
  test('rolled oats of USDA pass', () => {
    expect(implausible({ per100g: OATS })).toEqual([]);
  });

  test('a slipped decimal point in protein is noticed', () => {
    expect(implausible({ per100g: { ...OATS, proteinG: 131.5 } })).toHaveLength(2);
    expect(implausible({ per100g: { ...OATS, proteinG: 1.315 } })[0]).toMatch(/come to 86 g/);
  });

  test('kilojoules in place of kilocalories are noticed', () => {
    expect(implausible({ per100g: { ...OATS, energyKcal: 1586 } })[0]).toMatch(/1586 kcal does not fit/);
  });

  test('sugars above carbohydrate, as USDA has for milk, are left alone', () => {
    const milk = {
      waterG: 89.21,
      proteinG: 3.3,
      fatG: 1.98,
      carbohydrateG: 4.8,
      sugarsG: 5.06,
      energyKcal: 50,
    };
    expect(implausible({ per100g: milk })).toEqual([]);
  });

  test('cocoa passes by its own factors, and its fiber explains much of the rest', () => {
    const cocoa = {
      waterG: 3,
      proteinG: 19.6,
      fatG: 13.7,
      carbohydrateG: 57.9,
      fiberG: 33.2,
      energyKcal: 228,
    };
    const energyFactors = { protein: 1.83, fat: 8.37, carbohydrate: 1.33 };
    expect(implausible({ per100g: cocoa, energyFactors })).toEqual([]);
  });

  test('too little known is no reason to complain', () => {
    expect(implausible({ per100g: {} })).toEqual([]);
    expect(implausible({ per100g: { proteinG: 20 } })).toEqual([]);
  });
});
