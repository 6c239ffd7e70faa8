import { addDays, type CalendarDate, type ClockTime, dateOf, instantOf } from '../../time/zone.ts';
import type { NewReminder } from '../reminder-book.ts';

/** How far ahead occurrences are written down: an outage of a week is still reported in full. */
export const HORIZON_DAYS = 8;

export const MINUTE_MS = 60_000;
export const HOUR_MS = 60 * MINUTE_MS;

/** Today and the days to come in the kitchen's zone. */
export function datesAhead(nowMs: number, zone: string): readonly CalendarDate[] {
  const today = dateOf(nowMs, zone);
  return Array.from({ length: HORIZON_DAYS + 1 }, (_, days) => addDays(today, days));
}

/** The instant at which a calendar date is over. */
export function endOfDay(date: CalendarDate, zone: string): number {
  return instantOf({ date: addDays(date, 1), time: '00:00' as ClockTime }, zone);
}

/** When it is due by the wall clock, and the wall time it hangs on. */
export function atWall(
  date: CalendarDate,
  time: ClockTime,
  zone: string,
): Required<Pick<NewReminder, 'dueMs' | 'wall'>> {
  return { dueMs: instantOf({ date, time }, zone), wall: { date, time, zone } };
}
