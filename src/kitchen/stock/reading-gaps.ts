import type { Book } from '../../nutrition/book.ts';
import { addDays, type CalendarDate, type ClockTime, clockTime, dateOf, instantOf } from '../time/zone.ts';
import type { LoggedReading } from './ledger.ts';

/** A reading that was due and that nobody logged. */
export interface ReadingGap {
  readonly location: string;
  readonly date: CalendarDate;
  /** The kitchen's reading time it belongs to. */
  readonly time: ClockTime;
}

interface Slot {
  readonly time: ClockTime;
  readonly fromMs: number;
  readonly toMs: number;
}

/**
 * Readings missed between two instants, for every fridge and freezer. A reading belongs to the reading time it is
 * nearest to; a time counts as missed once the middle between it and the next has passed. Days before the place's
 * first reading are not counted: the log began then.
 */
export function readingGaps(
  book: Book,
  readings: readonly LoggedReading[],
  fromMs: number,
  nowMs: number,
): readonly ReadingGap[] {
  const { locations, timeZone, readingTimes } = book.settings;
  const gaps: ReadingGap[] = [];
  for (const place of locations.filter(({ kind }) => kind !== 'room')) {
    const own = readings.filter((reading) => reading.location === place.id).map(({ atMs }) => atMs);
    if (own.length === 0) continue;
    const begun = Math.max(fromMs, Math.min(...own));
    for (let date = dateOf(begun, timeZone); date <= dateOf(nowMs, timeZone); date = addDays(date, 1)) {
      for (const slot of slotsOf(date, readingTimes.map(clockTime), timeZone)) {
        if (slot.toMs > nowMs || slot.toMs <= begun) continue;
        if (!own.some((at) => at >= slot.fromMs && at < slot.toMs))
          gaps.push({ location: place.id, date, time: slot.time });
      }
    }
  }
  return gaps;
}

/** A day divided among its reading times, at the middle between two. */
function slotsOf(date: CalendarDate, times: readonly ClockTime[], zone: string): readonly Slot[] {
  const midnight = (day: CalendarDate) => instantOf({ date: day, time: clockTime('00:00') }, zone);
  const at = [...times].sort().map((time) => ({ time, ms: instantOf({ date, time }, zone) }));
  return at.map(({ time, ms }, i) => {
    const before = at[i - 1]?.ms;
    const after = at[i + 1]?.ms;
    return {
      time,
      fromMs: before === undefined ? midnight(date) : (before + ms) / 2,
      toMs: after === undefined ? midnight(addDays(date, 1)) : (ms + after) / 2,
    };
  });
}
