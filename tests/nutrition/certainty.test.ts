import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type MeasuredAmount, meets, rangeOf } from '../../src/nutrition/certainty/range.ts';
import { MEASURE_TOLERANCES } from '../../src/nutrition/certainty/tolerances.ts';
import type { ProductLabel } from '../../src/nutrition/food.ts';
import { foodOf, oats, peanutButter, wheyPowder } from '../helpers/foods.ts';

const mix: readonly MeasuredAmount[] = [
  { food: oats, massG: 162, measuredBy: 'levelled' },
  { food: wheyPowder, massG: 120, measuredBy: 'scooped' },
  { food: peanutButter, massG: 48, measuredBy: 'levelled' },
];
const piece = { factor: 1 / 6, cut: true };

describe('how sure a figure is', () => {
  test('by cup and spoon is wider than weighed, and both hold the figure', () => {
    const spooned = rangeOf(mix, 'proteinG', 'cup_and_spoon', piece);
    const weighed = rangeOf(mix, 'proteinG', 'weighed', piece);
    if (!spooned?.high || !weighed?.high) throw new Error('no range');
    expect(spooned.value).toBe(weighed.value);
    expect(spooned.low).toBeLessThan(weighed.low);
    expect(spooned.high).toBeGreaterThan(weighed.high);
    expect(weighed.low).toBeLessThan(weighed.value);
  });

  test('one weighed line alone is as sure as the scale', () => {
    const range = rangeOf([{ food: oats, massG: 100, measuredBy: 'weighed' }], 'proteinG', 'weighed');
    expect(range?.low).toBeCloseTo(13.15 * (1 - MEASURE_TOLERANCES.weighed.share), 9);
    expect(range?.high).toBeCloseTo(13.15 * (1 + MEASURE_TOLERANCES.weighed.share), 9);
  });

  test('pieces put on the scale do not depend on how much of a single food was mixed', () => {
    const range = rangeOf([{ food: oats, massG: 100, measuredBy: 'weighed' }], 'proteinG', 'weighed', piece);
    const value = 13.15 / 6;
    expect(range?.high).toBeCloseTo(value * 1.01, 9);
  });

  test('lines err independently, so ten of them are surer than one', () => {
    const one = rangeOf([{ food: oats, massG: 100, measuredBy: 'scooped' }], 'proteinG', 'cup_and_spoon');
    const ten = rangeOf(
      Array.from({ length: 10 }, () => ({ food: oats, massG: 10, measuredBy: 'scooped' as const })),
      'proteinG',
      'cup_and_spoon',
    );
    expect(13.15 - (ten?.low ?? 0)).toBeCloseTo((13.15 - (one?.low ?? 0)) / Math.sqrt(10), 9);
  });

  test('a label figure carries its rounding: 24 g of protein is 23.5 to 24.5', () => {
    const label = { servingG: 30, perServing: { proteinG: 24 } } as ProductLabel;
    const powder = foodOf('powder', { proteinG: 80 }, { product: label });
    const range = rangeOf([{ food: powder, massG: 30, measuredBy: 'weighed' }], 'proteinG', 'weighed');
    expect(24 - (range?.low ?? 0)).toBeCloseTo(24 * Math.hypot(0.01, 0.5 / 24), 9);
  });

  test('over an unknown there is a low end and no high end', () => {
    const range = rangeOf(mix, 'leucineG', 'cup_and_spoon', piece);
    expect(range?.high).toBeUndefined();
    expect(range?.low).toBeGreaterThan(0);
    expect(rangeOf(mix.slice(1, 2), 'leucineG', 'weighed')).toBeUndefined();
  });

  test('a recipe that states its own tolerance is believed', () => {
    const careful = mix.map((line) => ({ ...line, tolerance: 0.01 }));
    const stated = rangeOf(careful, 'proteinG', 'cup_and_spoon');
    const usual = rangeOf(mix, 'proteinG', 'cup_and_spoon');
    expect(stated?.low).toBeGreaterThan(usual?.low ?? Number.NaN);
  });

  test('never reaches below nothing, and always holds its figure', () => {
    const line = fc.record({
      food: fc.constantFrom(oats, wheyPowder, peanutButter),
      massG: fc.double({ min: 0, max: 5000, noNaN: true }),
      measuredBy: fc.constantFrom('weighed', 'levelled', 'scooped', 'counted', 'label'),
      tolerance: fc.double({ min: 0, max: 2, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.array(line, { maxLength: 8 }),
        fc.constantFrom('weighed', 'cup_and_spoon'),
        (lines, way) => {
          const range = rangeOf(lines as MeasuredAmount[], 'proteinG', way as 'weighed', piece);
          if (!range) return;
          expect(range.low).toBeGreaterThanOrEqual(0);
          expect(range.low).toBeLessThanOrEqual(range.value);
          expect(range.high).toBeGreaterThanOrEqual(range.value);
        },
      ),
      { numRuns: 1000 },
    );
  });
});

describe('a target', () => {
  const range = { value: 21.6, low: 19.8, high: 23.4 };
  test('is met, missed, or inside the range', () => {
    expect(meets(range, 'least', 19)).toBe('yes');
    expect(meets(range, 'least', 20)).toBe('unsure');
    expect(meets(range, 'least', 24)).toBe('no');
    expect(meets(range, 'most', 24)).toBe('yes');
    expect(meets(range, 'most', 22)).toBe('unsure');
    expect(meets(range, 'most', 19)).toBe('no');
  });
  test('at most is never met for sure over an unknown', () => {
    expect(meets({ ...range, high: undefined }, 'most', 24)).toBe('unsure');
  });
});
