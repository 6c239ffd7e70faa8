import type { KitchenMeasure } from '../measure/kitchen-measure.ts';
import { LINE_TOLERANCE, measureBy } from '../measure/kitchen-measure.ts';
import type { MeasureWay } from '../measure/measure-way.ts';
import type { Mix } from './mix.ts';

/** What is measured of one line, or nothing of it at all. */
export type LineMeasure = KitchenMeasure | undefined;

/** Below this a scale shows nothing: the line is left out. */
const NOTHING_G = 0.05;

/** Finer than usual, for lines that decide whether a limit holds. */
export const FINE_TOLERANCE = 0.009;

/** Measures every line in the handiest way within `tolerance`. */
export const measuresOf = (
  mix: Mix,
  grams: readonly number[],
  tolerance: number = LINE_TOLERANCE,
): LineMeasure[] =>
  mix.lines.map(({ ways }, at) => {
    const massG = grams[at] ?? 0;
    return massG < NOTHING_G ? undefined : measureBy(ways, massG, tolerance);
  });

export const gramsOf = (measures: readonly LineMeasure[]): number[] =>
  measures.map((measure) => measure?.massG ?? 0);

/** Grams of the steps a line can be measured in near `massG`: what the exact search may choose between. */
export function stepG(way: MeasureWay | undefined, massG: number): number {
  switch (way?.kind) {
    case 'spoons':
      return way.gPerTsp * spoonStep(massG / way.gPerTsp);
    case 'metric_volume':
      return way.gPerMl * (massG / way.gPerMl > 100 ? 10 : 5);
    case 'ounces':
      return 28.349523125 / (massG < 280 ? 4 : 2);
    case 'counted':
      return way.gEach * way.step;
    case 'grams':
    case undefined:
      return massG < 20 ? 0.5 : massG < 200 ? 1 : 5;
    default:
      return way satisfies never;
  }
}

/** Teaspoons: eighths below one, quarters below a tablespoon, then whole teaspoons, tablespoons, quarter cups. */
const spoonStep = (tsp: number): number =>
  tsp < 1 ? 1 / 8 : tsp < 3 ? 1 / 4 : tsp < 24 ? 1 : tsp < 192 ? 3 : 12;
