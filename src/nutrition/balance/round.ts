import { LINE_TOLERANCE, measureBy } from '../measure/kitchen-measure.ts';
import { changeOf, leastChange } from './least-change.ts';
import { linearRow } from './linear.ts';
import { FINE_TOLERANCE, gramsOf, type LineMeasure, measuresOf, stepG } from './measured-mix.ts';
import type { Mix, MixLine } from './mix.ts';
import type { Limit } from './question.ts';
import type { Range } from './ranges.ts';
import { missedBy, scooped } from './reached.ts';
import type { LinearSolver } from './solver.ts';

/** A mix in measures a kitchen can measure, every limit holding as measured. */
export interface RoundedMix {
  readonly measures: readonly LineMeasure[];
  readonly grams: readonly number[];
  /** The same before it was rounded to measures. */
  readonly exactG: readonly number[];
  readonly change: number;
}

/** How the search went: nothing keeps the limits at all, or something does that no measure of this kitchen hits. */
export type Rounding = RoundedMix | 'infeasible' | 'not_measurable';

const TIGHTENINGS: readonly number[] = [
  LINE_TOLERANCE,
  LINE_TOLERANCE,
  FINE_TOLERANCE,
  FINE_TOLERANCE,
  FINE_TOLERANCE,
];

/**
 * Solves, rounds to measures, and has the engine judge what was rounded. What a limit is missed by after rounding is
 * asked for on top, and it is solved again, measuring finer; when that does not do, whole steps of each line's
 * measure become the unknowns of a whole-number search, coarse steps first.
 */
export function solveAndRound(
  mix: Mix,
  ranges: readonly Range[],
  limits: readonly Limit[],
  solve: LinearSolver,
): Rounding {
  const tighter = limits.map(() => 0);
  let exactG: readonly number[] | undefined;
  for (const tolerance of TIGHTENINGS) {
    const solved = nearest(mix, ranges, limits, tighter, solve);
    if (!solved) break;
    exactG ??= solved;
    const measures = measuresWithin(mix, ranges, solved, tolerance);
    const done = accepted(mix, ranges, limits, measures, exactG);
    if (done) return handier(done, changeOf(mix, exactG), () => onSteps(mix, ranges, limits, solved, solve));
    limits.forEach((limit, at) => {
      tighter[at] = (tighter[at] ?? 0) + 1.05 * missedBy(mix, gramsOf(measures), limit);
    });
    if (!tighter.every(Number.isFinite)) return 'infeasible';
  }
  if (!exactG) return 'infeasible';
  return onSteps(mix, ranges, limits, exactG, solve) ?? 'not_measurable';
}

/** Rounding may cost this much change in all; beyond it the search over whole steps may know better. */
const ROUNDING_COST = 0.15;

/** What was found, unless it changes much more than exact grams need and steps change less. */
function handier(found: RoundedMix, exactChange: number, search: () => RoundedMix | undefined): RoundedMix {
  if (found.change - exactChange <= ROUNDING_COST) return found;
  const stepped = search();
  return stepped && stepped.change < found.change - 1e-9 ? stepped : found;
}

/** Exact grams that keep the limits, each asked to be `tighter` by its share. */
function nearest(
  mix: Mix,
  ranges: readonly Range[],
  limits: readonly Limit[],
  tighter: readonly number[],
  solve: LinearSolver,
  gap = 0,
): readonly number[] | undefined {
  let grams: readonly number[] | undefined;
  for (let turn = 0; turn < 4; turn++) {
    const before = grams;
    const rows = limits.map((limit, at) =>
      linearRow(mix, limit, asked(mix, limit, tighter[at] ?? 0, before)),
    );
    grams = leastChange(mix, ranges, rows, solve, gap)?.grams;
    if (!grams) return before;
    if (!limits.some((limit) => limit.evenIfScooped && missedBy(mix, grams ?? [], limit) > 0)) return grams;
  }
  return grams;
}

/** A limit's amount with room for rounding, and for the scoop where it must hold even then. */
function asked(mix: Mix, limit: Limit, tighter: number, grams: readonly number[] | undefined): number {
  const way = limit.bound === 'least' ? 1 : -1;
  const amount = limit.amount + way * tighter * Math.max(Math.abs(limit.amount), 1e-9);
  if (!limit.evenIfScooped) return amount;
  const range = scooped(mix, grams ?? mix.lines.map(({ baseG }) => baseG), limit.measure);
  if (!range || range.value <= 0) return amount;
  const half = 1 - range.low / range.value;
  return amount / (1 - way * half);
}

/** Lines with whole multiples, and lines that may not move, are told by the gram they must have. */
function measuresWithin(
  mix: Mix,
  ranges: readonly Range[],
  grams: readonly number[],
  tolerance: number,
): LineMeasure[] {
  const usual = measuresOf(mix, grams, tolerance);
  const exact = measuresOf(mix, grams, 1e-6);
  return usual.map((measure, at) => {
    const { wholeG, package: pack } = ranges[at] ?? {};
    if (wholeG === undefined) return measure;
    return pack === undefined ? exact[at] : inPackages(grams[at] ?? 0, wholeG, pack);
  });
}

/** "1 jar", "1.5 bags"; `undefined` when none of it is left. */
function inPackages(
  exactG: number,
  wholeG: number,
  { word, each }: NonNullable<Range['package']>,
): LineMeasure {
  const count = Math.round(exactG / wholeG);
  if (count === 0) return undefined;
  const packages = Number((count * each).toFixed(2));
  const massG = count * wholeG;
  const text = `${packages} ${packages === 1 ? word : `${word}s`}`;
  return { text, massG, exactG, deviation: massG / exactG - 1 };
}

/** The rounded mix, if the engine finds that all limits and ranges hold for what is measured. */
function accepted(
  mix: Mix,
  ranges: readonly Range[],
  limits: readonly Limit[],
  measures: readonly LineMeasure[],
  exactG: readonly number[],
): RoundedMix | undefined {
  const grams = gramsOf(measures);
  if (!limits.every((limit) => missedBy(mix, grams, limit) === 0)) return undefined;
  if (!ranges.every((range, at) => keepsRange(range, grams[at] ?? 0))) return undefined;
  return { measures, grams, exactG, change: changeOf(mix, grams) };
}

/** A range may be passed by what rounding to a measure takes; a range of one point is that measure. */
function keepsRange({ leastG, mostG, strict }: Range, massG: number): boolean {
  const share = strict ? 1e-6 : LINE_TOLERANCE;
  const slackG = strict ? 1e-6 : 0.5;
  return massG >= leastG * (1 - share) - slackG && massG <= mostG * (1 + share) + slackG;
}

/** Proving the very best steps takes longer than a chat waits; a twentieth more change is as good at the bench. */
const STEP_GAP = 0.05;

/** The whole-number search over steps of each line's measure, usual steps first, then grams. */
function onSteps(
  mix: Mix,
  ranges: readonly Range[],
  limits: readonly Limit[],
  exactG: readonly number[],
  solve: LinearSolver,
): RoundedMix | undefined {
  for (const step of [stepG, (_: unknown, massG: number) => (massG < 20 ? 0.5 : 1)]) {
    const stepped = ranges.map((range, at): Range => {
      const line = mix.lines[at];
      if (!line || range.wholeG !== undefined) return range;
      if (range.leastG === range.mostG) return fixedAt(line, range.leastG);
      return { ...range, wholeG: step(line.ways[0], exactG[at] ?? line.baseG) };
    });
    const margin = limits.map((limit) => (limit.evenIfScooped ? 1e-3 : 1e-6));
    const grams = nearest(mix, stepped, limits, margin, solve, STEP_GAP);
    if (!grams) continue;
    const done = accepted(mix, ranges, limits, measuresWithin(mix, ranges, grams, 1e-4), exactG);
    if (done) return done;
  }
  return undefined;
}

/** A line that stays is in the search what will be measured of it. */
function fixedAt({ ways }: MixLine, massG: number): Range {
  const measuredG = massG > 0 ? measureBy(ways, massG, LINE_TOLERANCE).massG : 0;
  return { leastG: measuredG, mostG: measuredG };
}
