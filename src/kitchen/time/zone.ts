import { Temporal } from 'temporal-polyfill';
import { Problem } from '../../nutrition/problem.ts';

/** A calendar date, YYYY-MM-DD, in no zone. Never mixed with an instant (epoch milliseconds, a number). */
export type CalendarDate = string & { readonly __calendarDate: never };

/** A wall-clock time, HH:MM, 24 h. */
export type ClockTime = string & { readonly __clockTime: never };

export interface WallTime {
  readonly date: CalendarDate;
  readonly time: ClockTime;
}

/** Reads YYYY-MM-DD; a day that does not exist (2026-02-30) is a problem. */
export function calendarDate(text: string): CalendarDate {
  try {
    if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) throw new RangeError(text);
    return Temporal.PlainDate.from(text, { overflow: 'reject' }).toString() as CalendarDate;
  } catch {
    throw new Problem(
      'bad_quantity',
      `"${text.slice(0, 40)}" is not a date.`,
      'Write a date like 2026-12-05.',
    );
  }
}

/** Reads HH:MM, 24 h. */
export function clockTime(text: string): ClockTime {
  if (/^([01]\d|2[0-3]):[0-5]\d$/.test(text)) return text as ClockTime;
  throw new Problem(
    'bad_quantity',
    `"${text.slice(0, 40)}" is not a time of day.`,
    'Write a time like 14:30.',
  );
}

/** Whether this machine knows the IANA zone, e.g. America/Chicago. */
export function isTimeZone(zone: string): boolean {
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(zone);
    return /^(UTC|[A-Za-z_]+(\/[A-Za-z0-9_+-]+)+)$/.test(zone);
  } catch {
    return false;
  }
}

/**
 * The instant of a wall time in a zone, in epoch milliseconds.
 * RFC 5545 §3.3.5: a time in the spring gap uses the offset in force before the gap (02:30 is 03:30 summer time);
 * a time that occurs twice in autumn is the first. Temporal calls that rule "compatible".
 * @example instantOf({date: '2026-03-08', time: '02:30'}, 'America/Chicago') // 08:30 UTC
 */
export function instantOf(wall: WallTime, zone: string): number {
  return Temporal.PlainDateTime.from(`${wall.date}T${wall.time}`).toZonedDateTime(zone, {
    disambiguation: 'compatible',
  }).epochMilliseconds;
}

/** The wall time of an instant in a zone; seconds are cut off. */
export function wallTimeOf(instantMs: number, zone: string): WallTime {
  const zoned = Temporal.Instant.fromEpochMilliseconds(instantMs).toZonedDateTimeISO(zone);
  return {
    date: zoned.toPlainDate().toString() as CalendarDate,
    time: zoned.toPlainTime().toString({ smallestUnit: 'minute' }) as ClockTime,
  };
}

/** The calendar date of an instant in a zone. */
export function dateOf(instantMs: number, zone: string): CalendarDate {
  return wallTimeOf(instantMs, zone).date;
}

/** The zone's abbreviation at an instant, e.g. CDT, for people. */
export function zoneName(instantMs: number, zone: string): string {
  const parts = new Intl.DateTimeFormat('en-US', { timeZone: zone, timeZoneName: 'short' }).formatToParts(
    instantMs,
  );
  return parts.find((part) => part.type === 'timeZoneName')?.value ?? zone;
}

export function addDays(date: CalendarDate, days: number): CalendarDate {
  return Temporal.PlainDate.from(date).add({ days }).toString() as CalendarDate;
}

/** Whole calendar days from one date to another; negative when `to` is earlier. */
export function daysBetween(from: CalendarDate, to: CalendarDate): number {
  return Temporal.PlainDate.from(from).until(Temporal.PlainDate.from(to)).days;
}

/** ISO weekday: 1 Monday to 7 Sunday. */
export function weekdayOf(date: CalendarDate): number {
  return Temporal.PlainDate.from(date).dayOfWeek;
}

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** "Sat Dec 5", for people in one kitchen and one season. */
export function sayDate(date: CalendarDate): string {
  const day = Temporal.PlainDate.from(date);
  return `${WEEKDAYS[day.dayOfWeek - 1]} ${MONTHS[day.month - 1]} ${day.day}`;
}

/** "2:30 pm", "noon" is "12:00 pm". */
export function sayTime(time: ClockTime): string {
  const hour = Number(time.slice(0, 2));
  return `${hour % 12 === 0 ? 12 : hour % 12}:${time.slice(3)} ${hour < 12 ? 'am' : 'pm'}`;
}

/** "Sat Dec 5, 2:30 pm CST". */
export function sayInstant(instantMs: number, zone: string): string {
  const wall = wallTimeOf(instantMs, zone);
  return `${sayDate(wall.date)}, ${sayTime(wall.time)} ${zoneName(instantMs, zone)}`;
}
