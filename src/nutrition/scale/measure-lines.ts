import { type KitchenMeasure, LINE_TOLERANCE, measureBy } from '../measure/kitchen-measure.ts';
import type { RecipeTable } from './recipe-table.ts';

/** Protein of the whole may differ this much from exact after all lines are rounded (relative). */
export const PROTEIN_TOLERANCE = 0.01;
/** Lines measured again are held so near that together they stay within `PROTEIN_TOLERANCE`. */
const TIGHT_TOLERANCE = 0.009;

export interface MeasuredLines {
  readonly measures: readonly KitchenMeasure[];
  readonly rawG: number;
  readonly proteinDeviation: number | undefined;
}

/**
 * Rounds every line to the handiest measure; when the protein of the whole drifts beyond 1 %, the lines that carry
 * the drift are measured again, finer, the heaviest first.
 */
export function measureLines(table: RecipeTable, factor: number): MeasuredLines {
  const measures: KitchenMeasure[] = [];
  let offG = 0;
  for (const { line, ways, proteinPerG } of table.lines) {
    const measure = measureBy(ways, line.massG * factor, LINE_TOLERANCE);
    measures.push(measure);
    offG += (measure.massG - measure.exactG) * proteinPerG;
  }
  const proteinG = table.proteinG * factor;
  if (Math.abs(offG) > PROTEIN_TOLERANCE * proteinG) offG = measureFiner(table, measures, offG, proteinG);
  let rawG = 0;
  for (const measure of measures) rawG += measure.massG;
  return { measures, rawG, proteinDeviation: proteinG > 0 ? offG / proteinG : undefined };
}

function measureFiner(
  table: RecipeTable,
  measures: KitchenMeasure[],
  startG: number,
  proteinG: number,
): number {
  let offG = startG;
  const done = new Set<number>();
  while (Math.abs(offG) > PROTEIN_TOLERANCE * proteinG && done.size < measures.length) {
    const at = worst(table, measures, offG, done);
    if (at < 0) return offG;
    done.add(at);
    const entry = table.lines[at];
    const before = measures[at];
    if (!entry || !before) continue;
    const finer = measureBy(entry.ways, before.exactG, TIGHT_TOLERANCE);
    measures[at] = finer;
    offG += (finer.massG - before.massG) * entry.proteinPerG;
  }
  return offG;
}

/** The line not yet measured again that pushes most in the direction of the drift. */
function worst(
  table: RecipeTable,
  measures: readonly KitchenMeasure[],
  offG: number,
  done: ReadonlySet<number>,
): number {
  let at = -1;
  let most = 0;
  for (let index = 0; index < measures.length; index++) {
    const measure = measures[index];
    const entry = table.lines[index];
    if (!measure || !entry || done.has(index)) continue;
    const push = (measure.massG - measure.exactG) * entry.proteinPerG * Math.sign(offG);
    if (push <= most) continue;
    most = push;
    at = index;
  }
  return at;
}
