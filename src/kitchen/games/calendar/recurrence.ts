import ICAL from 'ical.js';
import { Problem } from '../../../nutrition/problem.ts';
import { type CalendarDate, type ClockTime, instantOf, wallTimeOf } from '../../time/zone.ts';
import { MOST_OF_ONE_RULE, MOST_STEPS } from './limits.ts';
import type { Placed } from './moment.ts';

/** Dates from one to another, both included. */
export interface Horizon {
  readonly from: CalendarDate;
  readonly to: CalendarDate;
}

export interface Expanded {
  readonly instances: readonly Placed[];
  readonly steps: number;
  /** `cut`: dates beyond the horizon were left out; `gave_up`: too many steps before it was reached. */
  readonly end: 'whole' | 'cut' | 'gave_up';
}

class TooManySteps extends Error {}

/**
 * The parser's own iterator, with a count: some rules ("every day in February that is the 30th") never come to a
 * date, and it would look for one for ever.
 */
class BoundedIterator extends ICAL.RecurIterator {
  steps = 0;
  readonly #most: number;
  constructor(options: { rule: ICAL.Recur; dtstart: ICAL.Time }, most: number) {
    super(options);
    this.#most = most;
  }
  override check_contracting_rules(): boolean {
    this.steps += 1;
    if (this.#most !== undefined && this.steps > this.#most) throw new TooManySteps();
    return super.check_contracting_rules();
  }
}

/**
 * The wall times of a rule within the horizon. It recurs in local time (RFC 5545 §3.3.10), so the hour holds over a
 * change of clocks. Stops at the horizon, at 400 dates, or after 20,000 steps, whichever comes first.
 * @throws Problem `bad_file` for a rule that repeats within a day or cannot be read.
 */
export function expandRule(rule: ICAL.Recur, start: Placed, horizon: Horizon, mostSteps: number): Expanded {
  if (/^(SECONDLY|MINUTELY|HOURLY)$/.test(rule.freq)) {
    throw new Problem(
      'bad_file',
      `it repeats ${rule.freq.toLowerCase()}, which no game does.`,
      'Correct its repetition, or type the game.',
    );
  }
  const iterator = iteratorOf(rule, start, Math.min(mostSteps, MOST_STEPS));
  const instances: Placed[] = [];
  let end: Expanded['end'] = 'whole';
  try {
    for (let next = iterator.next(); next; next = iterator.next()) {
      const date = next.toString().slice(0, 10) as CalendarDate;
      if (date > horizon.to || instances.length >= MOST_OF_ONE_RULE) {
        end = 'cut';
        break;
      }
      if (date >= horizon.from) instances.push({ ...start, date });
    }
  } catch (error) {
    if (!(error instanceof TooManySteps)) throw error;
    end = 'gave_up';
  }
  return { instances, steps: iterator.steps, end };
}

function iteratorOf(rule: ICAL.Recur, start: Placed, most: number): BoundedIterator {
  const local = rule.clone();
  if (rule.until) local.until = localUntil(rule.until, start);
  const dtstart =
    start.time === undefined
      ? ICAL.Time.fromDateString(start.date)
      : ICAL.Time.fromDateTimeString(`${start.date}T${start.time}:00`);
  return new BoundedIterator({ rule: local, dtstart }, most);
}

/** UNTIL is in UTC when the start has a zone (RFC 5545 §3.3.10); the iterator compares wall times. */
function localUntil(until: ICAL.Time, start: Placed): ICAL.Time {
  const text = until.toString();
  if (until.isDate || start.time === undefined) {
    const day = ICAL.Time.fromDateString(text.slice(0, 10));
    return start.time === undefined ? day : ICAL.Time.fromDateTimeString(`${text.slice(0, 10)}T23:59:59`);
  }
  if (!text.endsWith('Z')) return until;
  const ms = instantOf(
    { date: text.slice(0, 10) as CalendarDate, time: text.slice(11, 16) as ClockTime },
    'UTC',
  );
  const wall = wallTimeOf(ms, start.timeZone);
  return ICAL.Time.fromDateTimeString(`${wall.date}T${wall.time}:${text.slice(17, 19)}`);
}
