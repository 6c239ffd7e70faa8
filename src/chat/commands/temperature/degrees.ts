import { celsiusOf, fahrenheitOf } from '../../../kitchen/stock/temperature.ts';
import type { Slots } from '../../slots.ts';

const tenths = (degree: number): number => Math.round(degree * 10) / 10;

/**
 * Both scales, to tenths, as a conversion is answered: the same reading is the same figure everywhere.
 * @example degrees(43) // '43 °F (6.1 °C)'
 */
export const degrees = (tempF: number): string => `${tenths(tempF)} °F (${tenths(celsiusOf(tempF))} °C)`;

/** The reading of a request in Fahrenheit, exactly as said. */
export function readingOf({ temp_f: f, temp_c: c }: Slots): number | undefined {
  if (typeof f === 'number') return f;
  return typeof c === 'number' ? fahrenheitOf(c) : undefined;
}
