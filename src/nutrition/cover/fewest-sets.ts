import type { LinearSolver } from '../balance/solver.ts';

/** Something that covers some things, and how little it is wanted among equals: 0 to below 1. */
export interface CoveringSet {
  readonly covers: readonly number[];
  readonly reluctance: number;
}

/**
 * Places of the fewest sets that cover `0 … count-1`; among equally few those with the least reluctance in sum. Empty
 * when nothing is to be covered, `undefined` when something is covered by none. The solver is loaded only where one
 * set is not enough.
 */
export async function fewestSets(
  count: number,
  sets: readonly CoveringSet[],
  solver: () => Promise<LinearSolver>,
): Promise<readonly number[] | undefined> {
  if (count === 0) return [];
  const covering = Array.from({ length: count }, (_, thing) =>
    sets.flatMap(({ covers }, at) => (covers.includes(thing) ? [at] : [])),
  );
  if (covering.some((at) => at.length === 0)) return undefined;
  const alone = sets
    .map(({ covers, reluctance }, at) => ({ at, reluctance, size: new Set(covers).size }))
    .filter(({ size }) => size === count)
    .sort((a, b) => a.reluctance - b.reluctance || a.at - b.at)[0];
  if (alone) return [alone.at];
  const solve = await solver();
  const columns = solve({
    // No sum of reluctances outweighs one set more.
    cost: sets.map(({ reluctance }) => 1 + reluctance / (count + 1)),
    lower: sets.map(() => 0),
    upper: sets.map(() => 1),
    whole: new Set(sets.keys()),
    rows: covering.map((at) => ({
      columns: at,
      values: at.map(() => 1),
      least: 1,
      most: Number.POSITIVE_INFINITY,
    })),
  });
  return columns?.flatMap((taken, at) => (taken > 0.5 ? [at] : []));
}
