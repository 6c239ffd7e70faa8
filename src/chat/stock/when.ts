import {
  addDays,
  type CalendarDate,
  calendarDate,
  clockTime,
  dateOf,
  instantOf,
  sayDate,
  sayTime,
  wallTimeOf,
  weekdayOf,
} from '../../kitchen/time/zone.ts';
import { Problem } from '../../nutrition/problem.ts';
import type { Asked } from '../command.ts';

const WEEKDAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
const HALF_DAY_MS = 12 * 3_600_000;

/**
 * The day of a slot like "mon 14:00", "yesterday" or "2026-11-02", looking back: a weekday is the last one that was,
 * today among them. `undefined` when no day was said.
 */
export function pastDay(asked: Asked, text: unknown): CalendarDate | undefined {
  if (typeof text !== 'string') return undefined;
  const today = dateOf(asked.request.nowMs, asked.kitchen.book.settings.timeZone);
  const [word = ''] = text.split(' ');
  if (word === 'today') return today;
  if (word === 'yesterday') return addDays(today, -1);
  if (word === 'tomorrow') return addDays(today, 1);
  const weekday = WEEKDAYS.indexOf(word) + 1;
  if (weekday > 0) return addDays(today, -((weekdayOf(today) - weekday + 7) % 7));
  return /^\d{4}-/.test(word) ? lastSuch(calendarDate(word), today) : undefined;
}

/** The reader takes a date without a year as coming; what was done lies behind. */
function lastSuch(date: CalendarDate, today: CalendarDate): CalendarDate {
  if (date <= addDays(today, 180)) return date;
  return calendarDate(`${Number(date.slice(0, 4)) - 1}${date.slice(4)}`);
}

/** The next such day, today among them: for "what expires friday". */
export function comingDay(asked: Asked, text: unknown): CalendarDate | undefined {
  const day = pastDay(asked, text);
  if (day === undefined || typeof text !== 'string') return undefined;
  const today = dateOf(asked.request.nowMs, asked.kitchen.book.settings.timeZone);
  return WEEKDAYS.includes(text.split(' ')[0] ?? '') && day < today ? addDays(day, 7) : day;
}

/**
 * When something was done, from the slot's text; now when nothing was said. An hour nobody called am or pm is the
 * earlier one that has already been and at which kitchens are awake: for a food clock that is the careful reading.
 * @throws Problem `needs_more` for a span like "week".
 */
export function whenDone(asked: Asked, text: unknown): number {
  const { nowMs } = asked.request;
  if (typeof text !== 'string' || text === '') return nowMs;
  const zone = asked.kitchen.book.settings.timeZone;
  const day = pastDay(asked, text);
  const time = /\b(\d\d:\d\d)\b/.exec(text)?.[1];
  if (day === undefined && time === undefined) {
    throw new Problem(
      'needs_more',
      `"${text.slice(0, 40)}" is not a time something was done.`,
      'Say a day or a time, like "yesterday", "monday 9:30" or "at 2 pm".',
    );
  }
  const today = dateOf(nowMs, zone);
  if (time === undefined) return day === today || day === undefined ? nowMs : noonOf(day, zone);
  const said = instantOf({ date: day ?? today, time: clockTime(time) }, zone);
  const unsure = asked.slots.time_unsure === true;
  const times = unsure ? [said - HALF_DAY_MS, said, said + HALF_DAY_MS] : [said];
  const onDay = times.filter((at) => dateOf(at, zone) === (day ?? today) && at <= nowMs);
  const done = onDay.find((at) => isWaking(at, zone)) ?? onDay.at(-1);
  if (done !== undefined) return done;
  return day === undefined ? justBefore(said, nowMs, zone) : said;
}

/**
 * What was taken for granted about when something was done: an hour without am or pm, a weekday that is today. Said with
 * the entry, since a clock or a use-by hangs on it.
 */
export function assumedWhen(asked: Asked, atMs: number): string[] {
  const { when, time_unsure: unsure } = asked.slots;
  if (typeof when !== 'string') return [];
  const { timeZone } = asked.kitchen.book.settings;
  const today = dateOf(asked.request.nowMs, timeZone);
  const { date, time } = wallTimeOf(atMs, timeZone);
  const day = WEEKDAYS.includes(when.split(' ')[0] ?? '') && date === today ? `today, ${sayDate(date)}` : '';
  const hour = unsure === true ? sayTime(time) : '';
  if (day === '' && hour === '') return [];
  return [
    `Taken as ${[day, hour].filter(Boolean).join(', ')}. If that is not right, say "undo" and tell it again with ${hour === '' ? 'the date' : 'am or pm'}.`,
  ];
}

/** From 5 in the morning to 8 in the evening; common practice, no source. */
function isWaking(atMs: number, zone: string): boolean {
  const { time } = wallTimeOf(atMs, zone);
  return time >= '05:00' && time < '20:00';
}

/** After midnight "at 23:30" is yesterday evening; a time further ahead stays ahead, and is refused as such. */
function justBefore(said: number, nowMs: number, zone: string): number {
  const today = dateOf(nowMs, zone);
  const { time } = wallTimeOf(said, zone);
  const yesterday = instantOf({ date: addDays(today, -1), time }, zone);
  return nowMs - yesterday < HALF_DAY_MS ? yesterday : said;
}

const noonOf = (date: CalendarDate, zone: string): number =>
  instantOf({ date, time: clockTime('12:00') }, zone);
