import { addDays, type CalendarDate, sayDate, weekdayOf } from '../../kitchen/time/zone.ts';
import type { Asked } from '../command.ts';
import { dayMeant, todayOf } from './when.ts';

/** Days asked about, both included, and how to call them. */
export interface Span {
  readonly from: CalendarDate;
  readonly to: CalendarDate;
  readonly name: string;
}

/** The days a slot like "week", "next week", "sat" or "2026-12-05" asks about; seven days from today when it names none. */
export function spanOf(asked: Asked): Span {
  const today = todayOf(asked);
  const { when } = asked.slots;
  const text = typeof when === 'string' ? when.replace(/\s*\d\d:\d\d$/, '') : '';
  const monday = addDays(today, 1 - weekdayOf(today));
  switch (text) {
    case 'next week':
      return named(addDays(monday, 7), addDays(monday, 13));
    case 'weekend': {
      const saturday = weekdayOf(today) === 7 ? addDays(today, -1) : addDays(monday, 5);
      return named(saturday, addDays(saturday, 1));
    }
    case 'month':
      return named(today, addDays(today, 30));
    case 'next month':
      return named(addDays(today, 30), addDays(today, 60));
  }
  const day = dayMeant(asked, when);
  return day ? named(day.date, day.date) : named(today, addDays(today, 6));
}

const named = (from: CalendarDate, to: CalendarDate): Span => ({
  from,
  to,
  name: from === to ? sayDate(from) : `${sayDate(from)} to ${sayDate(to)}`,
});
