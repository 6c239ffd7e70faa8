import type { LinearRow } from './linear.ts';
import type { Mix } from './mix.ts';
import type { Range } from './ranges.ts';
import type { LinearModel, LinearSolver } from './solver.ts';

/** A row that may give way, at a price far above any change of the recipe. */
export interface ElasticRow extends LinearRow {
  readonly mayGiveWay?: boolean;
}

export interface LeastChange {
  /** Grams of each line. */
  readonly grams: readonly number[];
  /** Sum over the lines of |grams - base| / base. */
  readonly change: number;
}

/** One share of a limit given way costs as much as changing an ingredient by this many times its amount. */
const GIVING_WAY = 1000;

/**
 * The mix nearest to the recipe that keeps every row and range, nearest by the sum of relative changes. A line is
 * its base plus what is added less what is taken away, so the sum is linear; whole multiples take a whole-number
 * column. `undefined` when nothing keeps them all.
 */
export function leastChange(
  mix: Mix,
  ranges: readonly Range[],
  rows: readonly ElasticRow[],
  solve: LinearSolver,
  gap = 0,
): LeastChange | undefined {
  if (ranges.some(({ leastG, mostG }) => leastG > mostG)) return undefined;
  const columns = solve({ ...modelOf(mix, ranges, rows), gap });
  if (!columns) return undefined;
  const grams = mix.lines.map(({ baseG }, at) => {
    const { leastG, mostG } = rangeAt(ranges, at);
    const massG = baseG + (columns[2 * at] ?? 0) - (columns[2 * at + 1] ?? 0);
    return Math.min(mostG, Math.max(leastG, massG));
  });
  return { grams, change: changeOf(mix, grams) };
}

/** The sum of relative changes of the lines. */
export const changeOf = (mix: Mix, grams: readonly number[]): number =>
  mix.lines.reduce((sum, { baseG }, at) => sum + Math.abs((grams[at] ?? 0) - baseG) / baseG, 0);

const rangeAt = (ranges: readonly Range[], at: number): Range => ranges[at] ?? { leastG: 0, mostG: 0 };

function modelOf(mix: Mix, ranges: readonly Range[], rows: readonly ElasticRow[]): LinearModel {
  const cost: number[] = [];
  const upper: number[] = [];
  const lower: number[] = [];
  const whole = new Set<number>();
  const made: LinearModel['rows'][number][] = [];
  const column = (price: number, least: number, most: number): number => {
    cost.push(price);
    lower.push(least);
    upper.push(most);
    return cost.length - 1;
  };
  for (const [at, { baseG }] of mix.lines.entries()) {
    const { leastG, mostG } = rangeAt(ranges, at);
    column(1 / baseG, Math.max(0, leastG - baseG), Math.max(0, mostG - baseG));
    column(1 / baseG, Math.max(0, baseG - mostG), Math.max(0, baseG - leastG));
  }
  for (const [at, { baseG }] of mix.lines.entries()) {
    const { wholeG, leastG, mostG } = rangeAt(ranges, at);
    if (wholeG === undefined) continue;
    const count = column(0, Math.ceil(leastG / wholeG - 1e-9), Math.floor(mostG / wholeG + 1e-9));
    whole.add(count);
    made.push({
      columns: [2 * at, 2 * at + 1, count],
      values: [1, -1, -wholeG],
      least: -baseG,
      most: -baseG,
    });
  }
  for (const row of rows) made.push(limitRow(mix, row, column));
  return { cost, lower, upper, whole, rows: made };
}

function limitRow(
  mix: Mix,
  { perG, least, most, scale, mayGiveWay }: ElasticRow,
  column: (price: number, least: number, most: number) => number,
): LinearModel['rows'][number] {
  const base = mix.lines.reduce((sum, { baseG }, at) => sum + (perG[at] ?? 0) * baseG, 0);
  const columns = mix.lines.flatMap((_, at) => [2 * at, 2 * at + 1]);
  const values = mix.lines.flatMap((_, at) => [(perG[at] ?? 0) / scale, -(perG[at] ?? 0) / scale]);
  if (mayGiveWay) {
    columns.push(column(GIVING_WAY, 0, Number.POSITIVE_INFINITY));
    values.push(Number.isFinite(least) ? 1 : -1);
  }
  return { columns, values, least: (least - base) / scale, most: (most - base) / scale };
}
