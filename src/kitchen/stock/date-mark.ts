import { addDays, type CalendarDate, daysBetween } from '../time/zone.ts';

/** FDA Food Code (model) 3-501.17(A): at 41 °F or below at most 7 days, the day of preparation being day 1. */
export const MOST_DAYS = 7;

/**
 * The last day a ready-to-eat food held cold may be served.
 * The earliest governs: the made day's own mark, or the mark of an ingredient opened or made before
 * (3-501.17(C)). A kitchen may set fewer days, never more.
 * @example lastDay('2026-10-01', 7, []) // '2026-10-07'
 */
export function lastDay(
  made: CalendarDate,
  days: number,
  ingredientMarks: readonly CalendarDate[],
): CalendarDate {
  const own = addDays(made, Math.min(days, MOST_DAYS) - 1);
  const [first = own] = [own, ...ingredientMarks].sort();
  return first;
}

/**
 * Calendar days of the mark that are left when food goes into the freezer: the day it is frozen counts as used.
 * Below zero never: food past its date is thrown out, not frozen.
 */
export function daysLeftAt(frozen: CalendarDate, useBy: CalendarDate): number {
  return Math.max(0, daysBetween(frozen, useBy));
}

/**
 * The last day after thawing: frozen days are not counted and nothing is reset (3-501.18(A)(1)); the day thawing
 * starts is the next day used, unless it is the very day it was frozen.
 * @example lastDayThawed('2026-03-20', '2026-03-03', 5) // '2026-03-24'
 */
export function lastDayThawed(thawed: CalendarDate, frozen: CalendarDate, daysLeft: number): CalendarDate {
  return addDays(thawed, thawed > frozen ? daysLeft - 1 : daysLeft);
}
