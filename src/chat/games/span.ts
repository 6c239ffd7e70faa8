import { addDays, type CalendarDate, calendarDate, sayDate, weekdayOf } from '../../kitchen/time/zone.ts';
import { Problem } from '../../nutrition/problem.ts';
import type { Asked } from '../command.ts';
import { dayMeant, todayOf } from './when.ts';

/** Days asked about, both included, and how to call them. */
export interface Span {
  readonly from: CalendarDate;
  readonly to: CalendarDate;
  readonly name: string;
}

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const SEASON_DAYS = 300;

/**
 * The days a slot like "week", "next week", "sat", "months dec" or "2026-12-05" asks about; seven days from today when
 * it names none. Months are calendar months; of the present one, what is left.
 * @throws Problem `bad_quantity` for a time that is not understood: other days would answer another question.
 */
export function spanOf(asked: Asked): Span {
  const today = todayOf(asked);
  const { when } = asked.slots;
  const text = typeof when === 'string' ? when.replace(/\s*\d\d:\d\d$/, '') : '';
  const monday = addDays(today, 1 - weekdayOf(today));
  switch (text) {
    case '':
    case 'week':
      return named(today, addDays(today, 6));
    case 'next week':
      return named(addDays(monday, 7), addDays(monday, 13));
    case 'last week':
      return named(addDays(monday, -7), addDays(monday, -1));
    case 'weekend': {
      const saturday = weekdayOf(today) === 7 ? addDays(today, -1) : addDays(monday, 5);
      return named(saturday, addDays(saturday, 1));
    }
    case 'month':
      return named(today, lastOf(monthFrom(today, 0)));
    case 'next month':
      return named(monthFrom(today, 1), lastOf(monthFrom(today, 1)));
    case 'last month':
      return named(monthFrom(today, -1), lastOf(monthFrom(today, -1)));
    case 'season':
      return named(today, addDays(today, SEASON_DAYS));
  }
  return stretch(text, today) ?? oneDay(asked);
}

/** "14 days", "2 weeks", "week of 2026-12-07", "months dec jan". */
function stretch(text: string, today: CalendarDate): Span | undefined {
  const [, count, unit] = /^(\d+) (day|week)s$/.exec(text) ?? [];
  if (count !== undefined) return named(today, addDays(today, Number(count) * (unit === 'week' ? 7 : 1) - 1));
  const day = /^week of (\d{4}-\d\d-\d\d)$/.exec(text)?.[1];
  if (day !== undefined) {
    const monday = addDays(calendarDate(day), 1 - weekdayOf(calendarDate(day)));
    return named(monday, addDays(monday, 6));
  }
  const months = /^months ([a-z ]+)$/
    .exec(text)?.[1]
    ?.split(' ')
    .map((month) => MONTHS.indexOf(month));
  const [first, last] = [months?.[0], months?.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  const ahead = (first + 1 - monthOf(today) + 12) % 12;
  const from = monthFrom(today, ahead);
  const to = lastOf(monthFrom(from, (last - first + 12) % 12));
  return named(from < today ? today : from, to);
}

function oneDay(asked: Asked): Span {
  const { when } = asked.slots;
  if (typeof when === 'string' && /^(?:every |game |\+\d+min)/.test(when)) {
    const today = todayOf(asked);
    return named(today, addDays(today, 6));
  }
  const day = dayMeant(asked, when);
  if (day) return named(day.date, day.date);
  throw new Problem(
    'bad_quantity',
    `I do not know which days "${String(when)}" are.`,
    'Write "schedule next week", "schedule december" or "schedule 12/5".',
  );
}

const monthOf = (date: CalendarDate): number => Number(date.slice(5, 7));

/** The first day of the month so many months on. */
function monthFrom(date: CalendarDate, months: number): CalendarDate {
  const count = Number(date.slice(0, 4)) * 12 + monthOf(date) - 1 + months;
  const two = String((count % 12) + 1).padStart(2, '0');
  return calendarDate(`${Math.floor(count / 12)}-${two}-01`);
}

const lastOf = (first: CalendarDate): CalendarDate => addDays(monthFrom(first, 1), -1);

const named = (from: CalendarDate, to: CalendarDate): Span => ({
  from,
  to,
  name: from === to ? sayDate(from) : `${sayDate(from)} to ${sayDate(to)}`,
});
