import { celsiusOf, fahrenheitOf } from '../../../kitchen/stock/temperature.ts';
import type { Slots } from '../../slots.ts';

const halves = (degree: number): number => Math.round(degree * 2) / 2;

/**
 * Both scales, to the half degree; no kitchen thermometer is closer (4-203.11: ±2 °F, ±1 °C).
 * @example degrees(43) // '43 °F (6 °C)'
 */
export const degrees = (tempF: number): string => `${halves(tempF)} °F (${halves(celsiusOf(tempF))} °C)`;

/** The reading of a request in Fahrenheit, exactly as said. */
export function readingOf({ temp_f: f, temp_c: c }: Slots): number | undefined {
  if (typeof f === 'number') return f;
  return typeof c === 'number' ? fahrenheitOf(c) : undefined;
}
