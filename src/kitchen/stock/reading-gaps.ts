import type { Book } from '../../nutrition/book.ts';
import { addDays, type CalendarDate, type ClockTime, clockTime, dateOf, instantOf } from '../time/zone.ts';
import type { LedgerView, LoggedReading } from './ledger.ts';

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
 * nearest to; a time counts as missed once the middle between it and the next has passed. Counted from when the place
 * was in use: its first reading ever, or the food that stands in it now. A place that is neither read nor holds food is
 * not told.
 */
export function readingGaps(
  book: Book,
  readings: readonly LoggedReading[],
  inUseSince: ReadonlyMap<string, number>,
  fromMs: number,
  nowMs: number,
): readonly ReadingGap[] {
  const { locations, timeZone, readingTimes } = book.settings;
  const gaps: ReadingGap[] = [];
  for (const place of locations.filter(({ kind }) => kind !== 'room')) {
    const own = readings.filter((reading) => reading.location === place.id).map(({ atMs }) => atMs);
    const since = inUseSince.get(place.id);
    if (since === undefined) continue;
    const begun = Math.max(fromMs, since);
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

/** Since when each place is in use, as far as the log and the stock tell. */
export async function placesInUse(ledger: LedgerView): Promise<ReadonlyMap<string, number>> {
  const since = new Map(await ledger.firstReadings());
  for (const { location, sinceMs } of await ledger.holdings()) {
    since.set(location, Math.min(since.get(location) ?? sinceMs, sinceMs));
  }
  return since;
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
