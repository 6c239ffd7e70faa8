import { instantOf, sayDate, sayTime, zoneName } from '../../time/zone.ts';
import { type Placed, type Places, place, stampMs } from './moment.ts';
import type { ReadEvent } from './read-event.ts';

const HOUR_MS = 3_600_000;
/** An end this far from the start was entered by somebody who knew the time. */
const LEAST_GAME_MS = HOUR_MS / 2;
const MOST_GAME_MS = 12 * HOUR_MS;

export interface StartRead {
  readonly start: Placed;
  /** Said to people when a time was taken for a placeholder. */
  readonly note?: string;
}

/**
 * The start of an event, or its day alone while the time is not announced: said so in the title, an all-day event,
 * midnight where it is played, or midnight UTC with no end that a game could have. An evening game may well begin at
 * 00:00 UTC (6 pm in Chicago in winter), so one that lasts an hour or a few is believed.
 */
export function startOfEvent(event: ReadEvent, saysTba: boolean, places: Places): StartRead {
  const placed = place(event.start, places);
  if (placed.time === undefined) return { start: placed };
  const isMidnightUtc = event.start.zone === 'UTC' && event.start.time === '00:00';
  if (saysTba) return { start: dayOnly(event, placed, isMidnightUtc) };
  const isMidnight = event.start.zone !== 'UTC' && placed.time === '00:00';
  if (!isMidnightUtc && !isMidnight) return { start: placed };
  const lasts = lengthMs(event, places);
  if (isMidnightUtc && lasts >= LEAST_GAME_MS && lasts <= MOST_GAME_MS) return { start: placed };
  const day = dayOnly(event, placed, isMidnightUtc);
  return { start: day, ...(isMidnightUtc ? { note: placeholderNote(placed, day) } : {}) };
}

/** A placeholder names its day in the zone it is written in: 00:00Z on the 5th is the 5th, not the evening before. */
function dayOnly(event: ReadEvent, placed: Placed, isMidnightUtc: boolean): Placed {
  return { date: isMidnightUtc ? event.start.date : placed.date, timeZone: placed.timeZone };
}

function placeholderNote({ date, time, timeZone }: Placed, day: Placed): string {
  const at =
    time === undefined
      ? ''
      : `, and not as ${sayDate(date)} ${sayTime(time)} ${zoneName(instantOf({ date, time }, timeZone), timeZone)}`;
  return `midnight UTC was read as "time not announced" on ${sayDate(day.date)}${at}`;
}

function lengthMs(event: ReadEvent, places: Places): number {
  if (event.durationSec !== undefined) return event.durationSec * 1000;
  const start = stampMs(event.start, places);
  const end = event.end && stampMs(event.end, places);
  return start === undefined || end === undefined ? 0 : end - start;
}
