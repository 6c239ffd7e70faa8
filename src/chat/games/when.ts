import {
  addDays,
  type CalendarDate,
  type ClockTime,
  calendarDate,
  clockTime,
  dateOf,
  daysBetween,
  instantOf,
  sayDate,
  weekdayOf,
} from '../../kitchen/time/zone.ts';
import { Problem } from '../../nutrition/problem.ts';
import type { Asked } from '../command.ts';

const WEEKDAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
const MOST_AHEAD_DAYS = 300;

/** A day, or the two days it may be. */
export interface DayMeant {
  readonly date: CalendarDate;
  /** Today's own weekday was said: this day, or a week later. */
  readonly orDate?: CalendarDate;
}

/**
 * The day to come that a slot like "sat 14:00", "tomorrow" or "2026-12-05" names; `undefined` when it names none.
 * @throws Problem `bad_quantity` for a day that is past, or so far ahead that a year was probably left out.
 */
export function dayMeant(asked: Asked, text: unknown): DayMeant | undefined {
  if (typeof text !== 'string') return undefined;
  const today = todayOf(asked);
  const [word = ''] = text.split(' ');
  if (word === 'today') return { date: today };
  if (word === 'tomorrow') return { date: addDays(today, 1) };
  if (word === 'yesterday') throw past(addDays(today, -1));
  const days = /^\+(\d{1,3})d$/.exec(word)?.[1];
  if (days !== undefined) return { date: addDays(today, Number(days)) };
  const weekday = WEEKDAYS.indexOf(word) + 1;
  if (weekday > 0) {
    const date = addDays(today, (weekday - weekdayOf(today) + 7) % 7);
    return date === today ? { date, orDate: addDays(today, 7) } : { date };
  }
  return /^\d{4}-/.test(word) ? { date: writtenDay(asked, calendarDate(word)) } : undefined;
}

/** The reader takes a date without a year as coming: 11/20 said on November 25 was almost surely this year's. */
function writtenDay(asked: Asked, date: CalendarDate): CalendarDate {
  const today = todayOf(asked);
  if (date < today) throw past(date);
  if (daysBetween(today, date) > MOST_AHEAD_DAYS && !/\b20\d\d\b/.test(asked.request.text)) {
    throw new Problem(
      'bad_quantity',
      `${sayDate(date)} has passed this year.`,
      `Write the year if you mean ${date.slice(0, 4)}: game ${date}.`,
    );
  }
  return date;
}

const past = (date: CalendarDate): Problem =>
  new Problem('bad_quantity', `${sayDate(date)} is past.`, 'Give a day to come, like "game Sat 2pm".');

export const todayOf = ({ request, kitchen }: Asked): CalendarDate =>
  dateOf(request.nowMs, kitchen.book.settings.timeZone);

/** The clock time in a slot like "sat 14:00". */
export function timeIn(text: unknown): ClockTime | undefined {
  const time = typeof text === 'string' ? /\b(\d\d:\d\d)\b/.exec(text)?.[1] : undefined;
  return time === undefined ? undefined : clockTime(time);
}

/** The other half of the day: 06:30 and 18:30. */
export function otherHalf(time: ClockTime): ClockTime {
  const hour = (Number(time.slice(0, 2)) + 12) % 24;
  return clockTime(`${String(hour).padStart(2, '0')}:${time.slice(3)}`);
}

/**
 * When the bus leaves: the last such time before the start when nobody said am or pm. A departure after the start is
 * of the evening before only when it says so itself, so it is refused.
 */
export function departureMeant(
  said: ClockTime,
  unsure: boolean,
  start: { readonly date: CalendarDate; readonly time?: ClockTime },
  zone: string,
): { readonly ms: number; readonly assumed: boolean } {
  const { date, time } = start;
  const at = (clock: ClockTime): number => instantOf({ date, time: clock }, zone);
  const choices = (unsure ? [said, otherHalf(said)] : [said]).sort();
  const startMs = time === undefined ? undefined : at(time);
  const before = choices.filter((clock) => startMs === undefined || at(clock) < startMs);
  const chosen = startMs === undefined ? before[0] : before.at(-1);
  if (chosen === undefined) {
    throw new Problem(
      'bad_quantity',
      'The bus would leave after the game has begun.',
      'Say when it leaves before the start, like "leaves 6:30am".',
    );
  }
  return { ms: at(chosen), assumed: unsure };
}
