import fc from 'fast-check';
import { expect, test } from 'vitest';
import { linearSolver } from '../../../src/nutrition/balance/solver.ts';
import { type CoveringSet, fewestSets } from '../../../src/nutrition/cover/fewest-sets.ts';
import { MOST_EXACT, maximalSets } from '../../../src/nutrition/cover/maximal-sets.ts';

/** Every choice of sets is looked at: the fewest, then the least reluctance. */
function exhaustive(
  count: number,
  sets: readonly CoveringSet[],
): { size: number; reluctance: number } | undefined {
  let best: { size: number; reluctance: number } | undefined;
  for (let chosen = 0; chosen < 1 << sets.length; chosen++) {
    const taken = sets.filter((_, at) => (chosen >> at) & 1);
    const covered = new Set(taken.flatMap(({ covers }) => covers));
    if (covered.size < count) continue;
    const reluctance = taken.reduce((sum, set) => sum + set.reluctance, 0);
    const isBetter =
      !best || taken.length < best.size || (taken.length === best.size && reluctance < best.reluctance);
    if (isBetter) best = { size: taken.length, reluctance };
  }
  return best;
}

test('the fewest sets, up to 8 things and 12 sets, as an exhaustive search finds them', async () => {
  const things = fc.integer({ min: 1, max: 8 });
  const instance = things.chain((count) =>
    fc.record({
      count: fc.constant(count),
      sets: fc.array(
        fc.record({
          covers: fc.uniqueArray(fc.integer({ min: 0, max: count - 1 }), { minLength: 1, maxLength: 4 }),
          reluctance: fc.integer({ min: 0, max: 99 }).map((n) => n / 100),
        }),
        { minLength: 1, maxLength: 12 },
      ),
    }),
  );
  await fc.assert(
    fc.asyncProperty(instance, async ({ count, sets }) => {
      const best = exhaustive(count, sets);
      const found = await fewestSets(count, sets, linearSolver);
      expect(found === undefined).toBe(best === undefined);
      if (!best) return;
      const taken = (found ?? []).flatMap((at) => sets[at] ?? []);
      expect(new Set(taken.flatMap(({ covers }) => covers)).size).toBe(count);
      expect(taken.length).toBe(best.size);
      expect(taken.reduce((sum, set) => sum + set.reluctance, 0)).toBeCloseTo(best.reluctance, 6);
    }),
    { numRuns: 150 },
  );
});

test('where one set covers all, the solver is not loaded', async () => {
  const never = () => Promise.reject(new Error('loaded'));
  const sets = [
    { covers: [0, 1], reluctance: 0.3 },
    { covers: [0, 1], reluctance: 0.1 },
    { covers: [0], reluctance: 0 },
  ];
  expect(await fewestSets(2, sets, never)).toEqual([1]);
  expect(await fewestSets(0, [], never)).toEqual([]);
});

test('the largest sets that hold are those no larger one that holds contains', () => {
  const bits = fc.array(fc.integer({ min: 1, max: 255 }), { minLength: 1, maxLength: 5 });
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 8 }), bits, (count, tops) => {
      const holds = (members: readonly number[]) => tops.some((top) => members.every((i) => (top >> i) & 1));
      const found = maximalSets(count, holds).map((members) => members.reduce((sum, i) => sum | (1 << i), 0));
      const all = Array.from({ length: (1 << count) - 1 }, (_, i) => i + 1).filter((set) =>
        holds(Array.from({ length: count }, (_, i) => i).filter((i) => (set >> i) & 1)),
      );
      const largest = all.filter((set) => !all.some((other) => other !== set && (other & set) === set));
      expect(found.sort()).toEqual(largest.sort());
    }),
  );
});

test('beyond the exact size, what is grown holds and every member that holds alone is in some set', () => {
  const count = MOST_EXACT + 5;
  const holds = (members: readonly number[]) => members.every((i) => i !== 3) && members.length <= 6;
  const found = maximalSets(count, holds);
  expect(found.every(holds)).toBe(true);
  expect(new Set(found.flat()).size).toBe(count - 1);
});
