import { Problem } from '../problem.ts';
import { type Fighter, fightersOf, nearestLimits, outward } from './conflict.ts';
import type { LineMeasure } from './measured-mix.ts';
import { type Mix, mixOf } from './mix.ts';
import type { BalanceQuestion, Limit } from './question.ts';
import { type Range, rangesOf } from './ranges.ts';
import { heldAgainst, reached, scooped } from './reached.ts';
import { type RoundedMix, solveAndRound } from './round.ts';
import { type LinearSolver, linearSolver } from './solver.ts';
import { textureLimits } from './texture-limits.ts';

/** How one limit stands in the balanced mix, per piece as measured. */
export interface LimitReached {
  readonly limit: Limit;
  readonly before: number | undefined;
  readonly after: number | undefined;
  /** For nutrients: what measuring by cup and spoon leaves open. */
  readonly range?: { readonly low: number; readonly high: number | undefined };
  /** It decides the mix: without it the recipe would change less. */
  readonly binds: boolean;
}

/** A mix that keeps its limits, in measures and in grams. */
export interface BalancedMix {
  readonly mix: Mix;
  /** One a line of the mix; undefined where nothing of it is used. */
  readonly measures: readonly LineMeasure[];
  readonly grams: readonly number[];
  readonly limits: readonly LimitReached[];
  /** Sum over the ingredients of relative change, as measured. */
  readonly change: number;
  /** Lines that ended at the least or most they may go to. */
  readonly atRangeEnd: readonly number[];
}

export type BalanceAnswer =
  | { readonly kind: 'balanced'; readonly mix: BalancedMix }
  | {
      readonly kind: 'infeasible';
      /** A smallest set of limits that fight; empty when they hold only in grams no measure of this kitchen hits. */
      readonly fighters: readonly Fighter[];
      /** The mix that comes nearest, with the limits it does keep. */
      readonly nearest?: BalancedMix;
    };

/**
 * Changes the amounts of a recipe as little as possible (sum of relative changes) so that every limit holds per piece
 * as measured with kitchen measures. The texture range of the recipe and the usual range of an ingredient hold too.
 * Throws `bad_quantity` for amounts that are no amounts, `not_possible` where a needed figure or price is missing.
 */
export async function balance(question: BalanceQuestion): Promise<BalanceAnswer> {
  checkLimits(question);
  const mix = mixOf(question);
  const ranges = rangesOf(mix, question.foodLimits ?? []);
  const limits = [...question.limits, ...unlessAsked(textureLimits(mix), question.limits)];
  const solve = await linearSolver();
  const rounded = solveAndRound(mix, ranges, limits, solve);
  if (typeof rounded !== 'string') return { kind: 'balanced', mix: described(mix, ranges, limits, rounded) };
  const fighters = rounded === 'infeasible' ? fightersOf(mix, ranges, limits, solve) : [];
  const near = nearestMix(mix, ranges, limits, solve);
  return { kind: 'infeasible', fighters, ...(near ? { nearest: near } : {}) };
}

/** A wet:dry the person asks for counts instead of the recipe's own. */
const unlessAsked = (texture: readonly Limit[], asked: readonly Limit[]): readonly Limit[] =>
  asked.some(({ measure }) => measure.kind === 'wet_dry') ? [] : texture;

/** The nearest that works, given way a little more where rounding to measures needs it. */
function nearestMix(
  mix: Mix,
  ranges: readonly Range[],
  limits: readonly Limit[],
  solve: LinearSolver,
): BalancedMix | undefined {
  let near = nearestLimits(mix, ranges, limits, solve);
  for (let turn = 0; near && turn < 5; turn++) {
    const rounded = solveAndRound(mix, ranges, near, solve);
    if (typeof rounded !== 'string') return described(mix, ranges, near, rounded);
    near = near.map((limit) => (limit.from === 'asked' ? eased(limit) : limit));
  }
  return undefined;
}

/** Half a percent less is asked. */
const eased = (limit: Limit): Limit => ({
  ...limit,
  amount: outward(limit.amount * (limit.bound === 'least' ? 0.995 : 1.005), limit.bound),
});

function described(
  mix: Mix,
  ranges: readonly Range[],
  limits: readonly Limit[],
  rounded: RoundedMix,
): BalancedMix {
  const base = mix.lines.map(({ baseG }) => baseG);
  const { measures, grams, exactG, change } = rounded;
  return {
    mix,
    measures,
    grams,
    change,
    limits: limits.map((limit) => {
      const range = scooped(mix, grams, limit.measure);
      return {
        limit,
        before: reached(mix, base, limit.measure),
        after: reached(mix, grams, limit.measure),
        ...(range ? { range } : {}),
        binds: binds(mix, exactG, limit),
      };
    }),
    atRangeEnd: mix.lines.flatMap(({ baseG }, at) => {
      const { leastG, mostG } = ranges[at] ?? { leastG: 0, mostG: 0 };
      const massG = exactG[at] ?? 0;
      const moved = Math.abs(massG - baseG) > baseG * 1e-6;
      return moved && (Math.abs(massG - leastG) < 1e-6 || Math.abs(massG - mostG) < 1e-6) ? [at] : [];
    }),
  };
}

/** A limit binds where the exact mix stands right at it. */
function binds(mix: Mix, exactG: readonly number[], limit: Limit): boolean {
  const value = heldAgainst(mix, exactG, limit);
  const slack = Math.max(Math.abs(limit.amount), 1e-9) * (limit.evenIfScooped ? 5e-3 : 1e-5);
  return value !== undefined && Math.abs(value - limit.amount) <= slack;
}

function checkLimits({ limits, foodLimits = [] }: BalanceQuestion): void {
  const amounts = [
    ...limits.map(({ amount }) => amount),
    ...foodLimits.flatMap(({ leastG = 0, mostG = 0, wholeG = 0 }) => [leastG, mostG, wholeG]),
  ];
  if (amounts.every((amount) => Number.isFinite(amount) && amount >= 0 && amount <= 1e6)) return;
  throw new Problem(
    'bad_quantity',
    'A target is an amount of zero or more.',
    'Write it like "at least 20 g protein" or "under 250 kcal".',
  );
}
