import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changeOf, leastChange } from '../../../src/nutrition/balance/least-change.ts';
import { linearRow } from '../../../src/nutrition/balance/linear.ts';
import { type Mix, mixOf } from '../../../src/nutrition/balance/mix.ts';
import type { Limit } from '../../../src/nutrition/balance/question.ts';
import { rangesOf } from '../../../src/nutrition/balance/ranges.ts';
import { missedBy, reached } from '../../../src/nutrition/balance/reached.ts';
import { linearSolver } from '../../../src/nutrition/balance/solver.ts';
import { foodOf, foodsOf, lineOf, recipeOf } from '../../helpers/foods.ts';

const price = (priceCents: number) => ({
  price: { priceCents, packageG: 100, packageName: 'bag', section: 'dry' },
});
const grain = foodOf(
  'grain',
  { proteinG: 10, fatG: 5, carbohydrateG: 70, energyKcal: 365, waterG: 10 },
  price(20),
);
const powder = foodOf(
  'powder',
  { proteinG: 80, fatG: 2, carbohydrateG: 8, energyKcal: 370, waterG: 5 },
  price(300),
);
const spread = foodOf(
  'spread',
  { proteinG: 22, fatG: 50, carbohydrateG: 20, energyKcal: 600, waterG: 2 },
  price(90),
);
const foods = foodsOf(grain, powder, spread);
const recipe = recipeOf(
  'small',
  [
    lineOf(grain, 100, { role: 'dry_base' }),
    lineOf(powder, 20, { role: 'protein' }),
    lineOf(spread, 40, { role: 'binder' }),
  ],
  { yieldPieces: 1, handlingLoss: 0 },
);
const mix: Mix = mixOf({ recipe, foods, pieces: 1, limits: [] });
const solve = await linearSolver();

const protein = (bound: Limit['bound'], amount: number): Limit => ({
  measure: { kind: 'nutrient', key: 'proteinG' },
  bound,
  amount,
  from: 'asked',
});
const energy = (bound: Limit['bound'], amount: number): Limit => ({
  ...protein(bound, amount),
  measure: { kind: 'nutrient', key: 'energyKcal' },
});
const rowsOf = (limits: readonly Limit[]) => limits.map((limit) => linearRow(mix, limit, limit.amount));

describe('the nearest mix, solved by hand', () => {
  // 100 g grain, 20 g powder, 40 g spread: 10 + 16 + 8.8 = 34.8 g protein.
  test('adds the ingredient that moves protein most for its share: 4 g more is a quarter of the powder', () => {
    const found = leastChange(mix, rangesOf(mix, []), rowsOf([protein('least', 38.8)]), solve);
    expect(found?.grams[0]).toBeCloseTo(100, 6);
    expect(found?.grams[1]).toBeCloseTo(25, 6);
    expect(found?.grams[2]).toBeCloseTo(40, 6);
    expect(found?.change).toBeCloseTo(0.25, 6);
  });

  test('goes on with the next when the first is at twice its amount', () => {
    // Powder to 40 g gives 50.8; 1.1 g more comes cheapest from grain (10 g for 100 %) or spread (8.8 g): grain, 11 %.
    const found = leastChange(mix, rangesOf(mix, []), rowsOf([protein('least', 51.9)]), solve);
    expect(found?.grams[1]).toBeCloseTo(40, 6);
    expect(found?.grams[0]).toBeCloseTo(111, 6);
    expect(found?.change).toBeCloseTo(1.11, 6);
  });

  test('changes nothing when the recipe keeps every limit already', () => {
    const found = leastChange(mix, rangesOf(mix, []), rowsOf([protein('least', 30)]), solve);
    expect(found?.change).toBe(0);
  });

  test('finds nothing where nothing keeps the limits', () => {
    const limits = [protein('least', 60), protein('most', 50)];
    expect(leastChange(mix, rangesOf(mix, []), rowsOf(limits), solve)).toBeUndefined();
  });
});

/** Every mix on the steps within half and twice, by trying them all: the least change that keeps the limits. */
function bruteForce(stepG: number, limits: readonly Limit[]): number | undefined {
  let best: number | undefined;
  const steps = mix.lines.map(({ baseG }) => {
    const first = Math.ceil((baseG * 0.5) / stepG - 1e-9);
    const last = Math.floor((baseG * 2) / stepG + 1e-9);
    return Array.from({ length: last - first + 1 }, (_, at) => (first + at) * stepG);
  });
  for (const a of steps[0] ?? [])
    for (const b of steps[1] ?? [])
      for (const c of steps[2] ?? []) {
        const grams = [a, b, c];
        if (!limits.every((limit) => missedBy(mix, grams, limit) === 0)) continue;
        best = Math.min(best ?? Number.POSITIVE_INFINITY, changeOf(mix, grams));
      }
  return best;
}

describe('the whole-number search', () => {
  const LIMITS = fc.record({
    proteinG: fc.integer({ min: 20, max: 70 }),
    energyKcal: fc.integer({ min: 400, max: 1100 }),
    cents: fc.integer({ min: 60, max: 220 }),
    share: fc.integer({ min: 10, max: 30 }),
  });

  test('finds the same least change as trying every mix on the steps', () => {
    fc.assert(
      fc.property(LIMITS, ({ proteinG, energyKcal, cents, share }) => {
        const limits: Limit[] = [
          protein('least', proteinG),
          energy('most', energyKcal),
          { measure: { kind: 'cost' }, bound: 'most', amount: cents, from: 'asked' },
          {
            measure: { kind: 'energy_share', of: 'protein' },
            bound: 'least',
            amount: share / 100,
            from: 'asked',
          },
        ];
        const stepped = rangesOf(mix, []).map((range) => ({ ...range, wholeG: 5 }));
        const found = leastChange(mix, stepped, rowsOf(limits), solve);
        const tried = bruteForce(5, limits);
        if (tried === undefined) expect(found).toBeUndefined();
        else expect(found?.change).toBeCloseTo(tried, 5);
      }),
      { numRuns: 40, seed: 7 },
    );
  });

  test('without steps never changes more than the best on the steps', () => {
    fc.assert(
      fc.property(LIMITS, ({ proteinG, energyKcal }) => {
        const limits = [protein('least', proteinG), energy('most', energyKcal)];
        const tried = bruteForce(5, limits);
        const found = leastChange(mix, rangesOf(mix, []), rowsOf(limits), solve);
        if (tried !== undefined) expect(found?.change ?? Number.NaN).toBeLessThanOrEqual(tried + 1e-9);
        if (found) {
          for (const limit of limits) {
            const value = reached(mix, found.grams, limit.measure) ?? Number.NaN;
            const short = limit.bound === 'least' ? limit.amount - value : value - limit.amount;
            expect(short).toBeLessThanOrEqual(limit.amount * 1e-6);
          }
        }
      }),
      { numRuns: 40, seed: 8 },
    );
  });
});
