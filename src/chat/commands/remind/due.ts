import {
  addDays,
  type CalendarDate,
  type ClockTime,
  calendarDate,
  clockTime,
  dateOf,
  instantOf,
  sayDate,
  sayTime,
  weekdayOf,
} from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';

const WEEKDAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
const DAY_MS = 24 * 3_600_000;
const FARTHEST_DAYS = 400;

/** When a reminder was asked for, as far as it is clear. */
export type Due =
  | { readonly kind: 'in'; readonly dueMs: number }
  | { readonly kind: 'at'; readonly date: CalendarDate; readonly time: ClockTime }
  | { readonly kind: 'every'; readonly weekdays: readonly number[]; readonly time: ClockTime }
  | { readonly kind: 'game'; readonly days: number; readonly minutes: number; readonly time?: ClockTime }
  /** One short question; each choice is a `when` that would be clear. */
  | { readonly kind: 'ask'; readonly question: string; readonly choices: readonly Choice[] };

export interface Choice {
  readonly label: string;
  readonly when: string;
}

export interface Said {
  /** As the reading gives it: "thu 15:00", "+20min", "every mon,thu 07:30", "game -1d 10:00". */
  readonly when: string;
  /** Nobody said morning or evening. */
  readonly unsure: boolean;
  readonly nowMs: number;
  readonly zone: string;
}

/**
 * Resolves what was said about the time; what is past, lacks an hour or means two things is asked about.
 * @example dueOf({ when: 'thu 15:00', unsure: false, nowMs, zone }) // { kind: 'at', date: '2026-12-03', time: '15:00' }
 */
export function dueOf(said: Said): Due {
  const offset = /^\+(\d+)min$/.exec(said.when)?.[1];
  if (offset !== undefined) return inMinutes(Number(offset), said);
  const time = /\b\d\d:\d\d$/.exec(said.when)?.[0];
  if (time !== undefined && said.unsure) return halfOfDay(said, clockTime(time));
  const clock = time === undefined ? undefined : clockTime(time);
  const game = /^game -(\d+)(d|h|min)/.exec(said.when);
  if (game) return beforeGame(Number(game[1]), game[2], clock);
  const day = said.when.replace(/\s*\d\d:\d\d$/, '');
  if (clock === undefined) return whatTime(day, said);
  if (day.startsWith('every')) return { kind: 'every', weekdays: weekdaysOf(day), time: clock };
  return onDay(day, clock, said);
}

function inMinutes(minutes: number, { nowMs }: Said): Due {
  if (minutes < 1 || minutes > FARTHEST_DAYS * 24 * 60) {
    throw new Problem(
      'bad_quantity',
      'That is not a time to come.',
      'Write it like "in 20 min check the slab".',
    );
  }
  // The clock is looked at each full minute.
  return { kind: 'in', dueMs: Math.round(nowMs / 60_000 + minutes) * 60_000 };
}

function beforeGame(amount: number, unit: string | undefined, time: ClockTime | undefined): Due {
  const at = time === undefined ? {} : { time };
  if (unit === 'd') return { kind: 'game', days: amount, minutes: 0, ...at };
  return { kind: 'game', days: 0, minutes: unit === 'h' ? amount * 60 : amount };
}

function weekdaysOf(day: string): readonly number[] {
  const named = day
    .replace(/^every\s*/, '')
    .split(',')
    .map((name) => WEEKDAYS.indexOf(name) + 1);
  return named.every((weekday) => weekday > 0) ? named : [1, 2, 3, 4, 5, 6, 7];
}

/** "6": both halves of the day are offered. */
function halfOfDay({ when }: Said, time: ClockTime): Due {
  const hour = Number(time.slice(0, 2)) % 12;
  const choices = [hour, hour + 12].map((each) => {
    const clock = clockTime(`${String(each).padStart(2, '0')}${time.slice(2)}`);
    return { label: sayTime(clock), when: when.replace(/\d\d:\d\d$/, clock) };
  });
  return {
    kind: 'ask',
    question: `${choices.map(({ label }) => label).join(' or ')}?`,
    choices,
  };
}

function whatTime(day: string, { nowMs, zone }: Said): Due {
  const named = day.startsWith('every') ? day : dayName(dateOf(nowMs, zone), day);
  return {
    kind: 'ask',
    question: `At what time${named === '' ? '' : `, ${named}`}?`,
    choices: ['08:00', '15:00'].map((time) => ({
      label: sayTime(clockTime(time)),
      when: `${day} ${time}`.trim(),
    })),
  };
}

function dayName(today: CalendarDate, day: string): string {
  const dates = datesOf(today, day);
  return dates.length === 1 ? sayDate(dates[0] ?? today) : day;
}

/** The days a word may mean, from today on; a weekday that is today may be today or next week. */
function datesOf(today: CalendarDate, day: string): readonly CalendarDate[] {
  if (day === '' || day === 'today') return [today];
  if (day === 'tomorrow') return [addDays(today, 1)];
  if (day === 'yesterday') return [addDays(today, -1)];
  const weekday = WEEKDAYS.indexOf(day) + 1;
  if (weekday === 0) return [calendarDate(day)];
  const ahead = (weekday - weekdayOf(today) + 7) % 7;
  return ahead === 0 ? [today, addDays(today, 7)] : [addDays(today, ahead)];
}

function onDay(day: string, time: ClockTime, { nowMs, zone }: Said): Due {
  const dates = datesOf(dateOf(nowMs, zone), day);
  const toCome = dates.filter((date) => instantOf({ date, time }, zone) > nowMs);
  const [date] = toCome;
  if (date !== undefined && toCome.length === dates.length && dates.length === 1) {
    if (instantOf({ date, time }, zone) > nowMs + FARTHEST_DAYS * DAY_MS) throw tooFar(date);
    return { kind: 'at', date, time };
  }
  const today = dates[0] ?? dateOf(nowMs, zone);
  if (toCome.length > 1) {
    return {
      kind: 'ask',
      question: `Today, ${sayDate(today)}, or next week?`,
      choices: toCome.map((each) => choiceOn(each, time)),
    };
  }
  const next = date ?? (day === '' || day === 'today' ? addDays(today, 1) : undefined);
  return {
    kind: 'ask',
    question: `${sayDate(today)}, ${sayTime(time)} is past. When then?`,
    choices: next === undefined ? [] : [choiceOn(next, time)],
  };
}

const choiceOn = (date: CalendarDate, time: ClockTime): Choice => ({
  label: `${sayDate(date)}, ${sayTime(time)}`,
  when: `${date} ${time}`,
});

const tooFar = (date: CalendarDate): Problem =>
  new Problem(
    'bad_quantity',
    `${date} is more than a year away.`,
    'Put it into the team calendar; reminders reach a year ahead.',
  );
