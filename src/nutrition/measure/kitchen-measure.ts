import type { Food } from '../food.ts';
import { Problem } from '../problem.ts';
import { amountText, grouped, nearAmountText, readableGrams } from './amount-text.ts';
import { type MeasureWay, measureWays } from './measure-way.ts';
import { guideOunces, OUNCE_G } from './published-rounding.ts';
import { type VolumeMeasure, volumeMeasure } from './volume-measure.ts';

/** What a person can measure, beside what the sum asked for. */
export interface KitchenMeasure {
  /** "2 1/2 cups", "1 lb 4 oz", "3 1/2 scoops", or grams where nothing else comes near. */
  readonly text: string;
  /** Grams as measured. */
  readonly massG: number;
  readonly exactG: number;
  /** Relative: 0.01 is 1 % more than exact. */
  readonly deviation: number;
  /** What to do when counting alone does not do: beat the eggs and weigh. */
  readonly note?: string;
}

/** A line may differ this much from exact after rounding to measures (relative). */
export const LINE_TOLERANCE = 0.03;

/**
 * The handiest measure within `tolerance` of `massG` grams of a food, never a silent nothing.
 * @param unit the unit the recipe uses, so that a weighed line stays weighed and a counted one counted.
 * @throws Problem `bad_quantity` when `massG` is not above 0.
 * @example kitchenMeasure(rolledOats, 405, 'cup').text // '1 qt + 1 cup'
 */
export function kitchenMeasure(
  food: Food,
  massG: number,
  unit?: string,
  tolerance: number = LINE_TOLERANCE,
  qualifier?: string,
): KitchenMeasure {
  if (!(massG > 0 && Number.isFinite(massG))) {
    throw new Problem('bad_quantity', `There is no measure for ${massG} g.`, 'Write an amount above 0.');
  }
  return measureBy(measureWays(food, unit, qualifier), massG, tolerance);
}

/** As `kitchenMeasure`, for ways found beforehand; this is the path a whole recipe takes. */
export function measureBy(ways: readonly MeasureWay[], massG: number, tolerance: number): KitchenMeasure {
  for (const way of ways) {
    const measure = tryWay(way, massG, tolerance);
    if (measure) return measure;
  }
  return inGrams(massG, tolerance, ways[0]);
}

function tryWay(way: MeasureWay, massG: number, tolerance: number): KitchenMeasure | undefined {
  switch (way.kind) {
    case 'spoons':
      return fromVolume(volumeMeasure(massG / way.gPerTsp, tolerance), way.gPerTsp, massG);
    case 'metric_volume':
      return inMilliliters(way.gPerMl, massG, tolerance);
    case 'ounces':
      return inOunces(massG, tolerance);
    case 'counted':
      return counted(way, massG, tolerance);
    case 'grams':
      return undefined;
    default:
      return way satisfies never;
  }
}

const measured = (text: string, massG: number, exactG: number, note?: string): KitchenMeasure =>
  note === undefined
    ? { text, massG, exactG, deviation: massG / exactG - 1 }
    : { text, massG, exactG, deviation: massG / exactG - 1, note };

const fromVolume = (
  volume: VolumeMeasure | undefined,
  gPerTsp: number,
  exactG: number,
): KitchenMeasure | undefined => volume && measured(volume.text, volume.tsp * gPerTsp, exactG);

function inMilliliters(gPerMl: number, exactG: number, tolerance: number): KitchenMeasure | undefined {
  const ml = exactG / gPerMl;
  for (const step of [50, 10, 5, 1, 0.5]) {
    const rounded = Math.round(ml / step) * step;
    if (rounded === 0 || Math.abs(rounded / ml - 1) > Math.min(tolerance, 0.01)) continue;
    const text =
      rounded >= 1000 ? `${grouped(Math.floor(rounded / 1000))}${litreRest(rounded)} L` : `${rounded} mL`;
    return measured(text, rounded * gPerMl, exactG);
  }
  return undefined;
}

const litreRest = (ml: number): string => {
  const rest = (ml % 1000).toFixed(0).padStart(3, '0').replace(/0+$/, '');
  return rest === '' ? '' : `.${rest}`;
};

/** By the published guide where it comes near enough, else to finer steps. */
function inOunces(exactG: number, tolerance: number): KitchenMeasure | undefined {
  const ounces = exactG / OUNCE_G;
  const guided = guideOunces(ounces);
  for (const rounded of [guided, Math.round(ounces * 4) / 4, Math.round(ounces * 8) / 8]) {
    if (rounded === 0 || Math.abs(rounded / ounces - 1) > tolerance) continue;
    return measured(ouncesText(rounded), rounded * OUNCE_G, exactG);
  }
  return undefined;
}

/** @example ouncesText(20) // '1 lb 4 oz' */
export function ouncesText(ounces: number): string {
  if (ounces < 16) return `${amountText(ounces)} oz`;
  const pounds = Math.floor(ounces / 16);
  const rest = ounces - pounds * 16;
  return rest < 1e-9 ? `${grouped(pounds)} lb` : `${grouped(pounds)} lb ${amountText(rest)} oz`;
}

function counted(
  way: MeasureWay & { kind: 'counted' },
  exactG: number,
  tolerance: number,
): KitchenMeasure | undefined {
  const count = exactG / way.gEach;
  const whole = Math.round(count);
  const near =
    Math.abs(whole / count - 1) <= Math.min(tolerance, 0.01)
      ? whole
      : Math.round(count / way.step) * way.step;
  if (near > 0 && Math.abs(near / count - 1) <= tolerance) {
    return measured(`${amountText(near)} ${near > 1 ? way.many : way.one}`, near * way.gEach, exactG);
  }
  if (!way.egg) return undefined;
  const grams = readableGrams(exactG, tolerance);
  const crack = Math.max(1, Math.ceil(count));
  const note = `beat ${crack} ${crack > 1 ? way.many : way.one}, weigh out ${grams.text} (${nearAmountText(count)} by count)`;
  return measured(`${grams.text} of ${crack} beaten`, grams.massG, exactG, note);
}

/** Grams, with the nearest count or spoon beside them, so that nobody reads "nothing". */
function inGrams(exactG: number, tolerance: number, way: MeasureWay | undefined): KitchenMeasure {
  const grams = readableGrams(exactG, tolerance);
  const hint = hintOf(way, exactG);
  return measured(hint === '' ? grams.text : `${grams.text} (${hint})`, grams.massG, exactG);
}

function hintOf(way: MeasureWay | undefined, exactG: number): string {
  if (way?.kind === 'counted') {
    const count = exactG / way.gEach;
    return count < 0.1 ? '' : `about ${nearAmountText(count)} ${count > 1 ? way.many : way.one}`;
  }
  if (way?.kind !== 'spoons') return '';
  const tsp = exactG / way.gPerTsp;
  if (tsp < 0.03) return 'less than a pinch';
  if (tsp < 0.1) return 'about a pinch';
  const near = volumeMeasure(tsp, 0.2) ?? volumeMeasure(tsp, 0.5);
  return near ? `about ${near.text}` : '';
}
