import { amountText, grouped } from './amount-text.ts';
import { CUP_PARTS, QUART_EIGHTHS, spoonLadder } from './spoon-ladder.ts';

/** A volume a person can measure. */
export interface VolumeMeasure {
  readonly tsp: number;
  readonly text: string;
}

const CUP_TSP = 48;
const MOST_LADDER_CUPS = 64;
/** What a deviation weighs against handling: at 3 % as much as one or two more spoonfuls. */
const DEVIATION_WEIGHT = 1.6 / (0.03 * 0.03);

/**
 * The handiest measure within `tolerance` (relative) of `tsp` teaspoons; undefined when cups and spoons cannot come
 * that near. Below a quart cups and spoons, then quarts and cups, then gallons.
 * @example volumeMeasure(40, 0.03)?.text // '3/4 cup + 1 Tbsp + 1 tsp'
 */
export function volumeMeasure(tsp: number, tolerance: number): VolumeMeasure | undefined {
  const cups = tsp / CUP_TSP;
  if (cups <= 4 * (1 + 1e-9)) return bySpoons(tsp * 8, tsp * 8, tolerance, '', 0);
  if (cups >= MOST_LADDER_CUPS) return byGallons(cups, tolerance);
  return byQuarts(cups, tolerance) ?? quartsAndSpoons(tsp, tolerance);
}

function bySpoons(
  eighths: number,
  whole: number,
  tolerance: number,
  prefix: string,
  prefixTsp: number,
): VolumeMeasure | undefined {
  const { effort, text } = spoonLadder();
  const slack = whole * tolerance + 1e-9;
  const perWhole = 1 / whole;
  const first = Math.max(1, Math.ceil(eighths - slack));
  const last = Math.min(QUART_EIGHTHS, Math.floor(eighths + slack));
  let best = -1;
  let bestCost = Number.POSITIVE_INFINITY;
  for (let at = first; at <= last; at++) {
    const handling = effort[at] ?? Number.POSITIVE_INFINITY;
    if (handling >= bestCost) continue;
    const off = (at - eighths) * perWhole;
    const cost = handling + off * off * DEVIATION_WEIGHT;
    if (cost < bestCost) {
      bestCost = cost;
      best = at;
    }
  }
  if (best < 0) return undefined;
  if (best === QUART_EIGHTHS && prefix === '') return { tsp: 192, text: '1 qt' };
  return { tsp: prefixTsp + best / 8, text: prefix + (text[best] ?? '') };
}

const CUP_PART_SIZES = Float64Array.from(CUP_PARTS, ([twelfths]) => twelfths / 12);
const CUP_PART_EFFORTS = Float64Array.from(CUP_PARTS, ([, effort]) => effort);

/** Quarts and cups, by twelfths of a cup. */
function byQuarts(cups: number, tolerance: number): VolumeMeasure | undefined {
  const lowest = Math.floor(cups * (1 - tolerance));
  const highest = Math.floor(cups * (1 + tolerance));
  let best = 0;
  let bestCost = Number.POSITIVE_INFINITY;
  const perCups = 1 / cups;
  for (let whole = lowest; whole <= highest; whole++) {
    for (let part = 0; part < CUP_PARTS.length; part++) {
      const candidate = whole + (CUP_PART_SIZES[part] ?? 0);
      const off = candidate * perCups - 1;
      if (Math.abs(off) > tolerance + 1e-9) continue;
      const handling = (CUP_PART_EFFORTS[part] ?? 0) + (whole % 4 === 0 ? 0 : 0.3);
      const cost = handling + off * off * DEVIATION_WEIGHT;
      if (cost < bestCost) {
        bestCost = cost;
        best = candidate;
      }
    }
  }
  return best === 0 ? undefined : { tsp: best * CUP_TSP, text: largeText(best) };
}

function quartsAndSpoons(tsp: number, tolerance: number): VolumeMeasure | undefined {
  const quarts = Math.floor(tsp / 192);
  const rest = (tsp - quarts * 192) * 8;
  return bySpoons(rest, tsp * 8, tolerance, `${largeText(quarts * 4)} + `, quarts * 192);
}

/** Four gallons and more: to the cup, and to the quarter cup where the tolerance is tight. */
function byGallons(cups: number, tolerance: number): VolumeMeasure | undefined {
  const whole = Math.round(cups);
  const near = Math.abs(whole / cups - 1) <= tolerance ? whole : Math.round(cups * 4) / 4;
  return { tsp: near * CUP_TSP, text: largeText(near) };
}

/** Gallons, quarts and cups of a whole number of twelfths of a cup. */
function largeText(cups: number): string {
  const gallons = Math.floor(cups / 16);
  const quarts = Math.floor((cups - gallons * 16) / 4);
  const rest = cups - gallons * 16 - quarts * 4;
  let text = gallons > 0 ? `${grouped(gallons)} gal` : '';
  if (quarts > 0) text += `${text && ' + '}${quarts} qt`;
  if (rest > 1e-9) text += `${text && ' + '}${amountText(rest)} ${rest > 1 ? 'cups' : 'cup'}`;
  return text;
}
