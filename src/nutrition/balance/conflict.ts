import { leastChange } from './least-change.ts';
import { linearRow } from './linear.ts';
import type { Mix } from './mix.ts';
import type { Limit } from './question.ts';
import type { Range } from './ranges.ts';
import { heldAgainst, reached } from './reached.ts';
import type { LinearSolver } from './solver.ts';

/** Something that can be set aside to see whether it is what stands in the way. */
export type Fighter =
  | { readonly kind: 'limit'; readonly limit: Limit }
  /** The recipe's own texture: grams of wet over grams of dry. */
  | { readonly kind: 'texture' }
  /** No ingredient below half or above twice, and what the person said of ingredients. */
  | { readonly kind: 'ingredients' };

/**
 * A smallest set of limits that cannot hold together: each is left out in turn and stays out when the rest still
 * fights. Empty when the limits do not fight in exact grams.
 */
export function fightersOf(
  mix: Mix,
  ranges: readonly Range[],
  limits: readonly Limit[],
  solve: LinearSolver,
): Fighter[] {
  const texture = limits.filter(({ from }) => from === 'texture');
  let fighting: Fighter[] = [
    { kind: 'ingredients' },
    ...(texture.length > 0 ? [{ kind: 'texture' } as const] : []),
    ...limits.filter(({ from }) => from === 'asked').map((limit) => ({ kind: 'limit', limit }) as const),
  ];
  const feasible = (fighters: readonly Fighter[]): boolean => {
    const kept = fighters.flatMap((f) =>
      f.kind === 'limit' ? [f.limit] : f.kind === 'texture' ? texture : [],
    );
    const free = ranges.map(() => ({ leastG: 0, mostG: 1e6 }));
    const within = fighters.some(({ kind }) => kind === 'ingredients') ? ranges : free;
    const rows = kept.map((limit) => linearRow(mix, limit, stretched(mix, limit)));
    return leastChange(mix, within, rows, solve) !== undefined;
  };
  if (feasible(fighting)) return [];
  for (const fighter of [...fighting]) {
    const others = fighting.filter((other) => other !== fighter);
    if (!feasible(others)) fighting = others;
  }
  return fighting;
}

/** The amount of a limit, farther where it must hold even if scooped, by what the recipe's own measures leave open. */
function stretched(mix: Mix, limit: Limit): number {
  if (!limit.evenIfScooped) return limit.amount;
  const base = mix.lines.map(({ baseG }) => baseG);
  const value = reached(mix, base, limit.measure);
  const held = heldAgainst(mix, base, limit);
  return value !== undefined && held !== undefined && held > 0 ? (limit.amount * value) / held : limit.amount;
}

/**
 * The asked limits moved to where they can hold together: the sum of the shares by which they give way is the
 * smallest there is, then the recipe changes least. `undefined` when what may not give way already fights.
 */
export function nearestLimits(
  mix: Mix,
  ranges: readonly Range[],
  limits: readonly Limit[],
  solve: LinearSolver,
): Limit[] | undefined {
  const rows = limits.map((limit) => ({
    ...linearRow(mix, limit, stretched(mix, limit)),
    mayGiveWay: limit.from === 'asked',
  }));
  const solved = leastChange(mix, ranges, rows, solve);
  if (!solved) return undefined;
  return limits.map((limit) => {
    const value = heldAgainst(mix, solved.grams, limit);
    if (limit.from !== 'asked' || value === undefined) return limit;
    const holds = limit.bound === 'least' ? value >= limit.amount : value <= limit.amount;
    return holds ? limit : { ...limit, amount: outward(value, limit.bound) };
  });
}

/** A figure one can say, on the side that can be kept. @example outward(18.768, 'least') // 18.7 */
export function outward(value: number, bound: 'least' | 'most'): number {
  const size = Math.abs(value);
  const step = size >= 100 ? 1 : size >= 10 ? 0.1 : size >= 1 ? 0.01 : 0.001;
  const steps = bound === 'least' ? Math.floor(value / step - 1e-9) : Math.ceil(value / step + 1e-9);
  return Number((steps * step).toFixed(3));
}
