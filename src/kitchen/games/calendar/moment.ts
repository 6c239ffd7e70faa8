import ICAL from 'ical.js';
import { Problem } from '../../../nutrition/problem.ts';
import {
  type CalendarDate,
  type ClockTime,
  calendarDate,
  clockTime,
  instantOf,
  wallTimeOf,
} from '../../time/zone.ts';
import type { CalendarZones } from './zones.ts';

/** A date or date-time as a calendar writes it. */
export interface Stamp {
  readonly date: CalendarDate;
  readonly time?: ClockTime;
  /** Absent for a floating time and for a date. */
  readonly zone?: 'UTC' | { readonly tzid: string };
}

/** A stamp in the one zone the kitchen keeps it in. */
export interface Placed {
  readonly date: CalendarDate;
  readonly time?: ClockTime;
  readonly timeZone: string;
}

/** The stamps of a property that the parser has read: one, or several for EXDATE and RDATE. */
export function stampsOf(property: ICAL.Property): Stamp[] {
  const tzid = property.getParameter('tzid');
  const [, , , ...values] = property.toJSON() as [string, object, string, ...unknown[]];
  return values.map((value) => stampFrom(String(value), typeof tzid === 'string' ? tzid : undefined));
}

/** The parser leaves "2026-12-05", "2026-12-05T14:00:00" or the same with Z; it does not object to month 13. */
function stampFrom(value: string, tzid: string | undefined): Stamp {
  const date = calendarDate(value.slice(0, 10));
  if (value.length <= 10) return { date };
  const time = clockTime(value.slice(11, 16));
  if (value.endsWith('Z')) return { date, time, zone: 'UTC' };
  return { date, time, ...(tzid === undefined ? {} : { zone: { tzid } }) };
}

/** Where stamps are placed: the file's zones, and the zones for UTC and floating times. */
export interface Places {
  readonly zones: CalendarZones;
  /** The calendar's own zone when it names one; UTC times are shown in it. */
  readonly shownZone: string;
  readonly kitchenZone: string;
}

/** The wall time and zone of a stamp. UTC becomes the calendar's zone; floating is the kitchen's (RFC 5545 §3.3.5). */
export function place(stamp: Stamp, places: Places): Placed {
  const { date, time, zone } = stamp;
  if (time === undefined) return { date, timeZone: places.kitchenZone };
  if (zone === undefined) return { date, time, timeZone: places.kitchenZone };
  if (zone === 'UTC') {
    return { ...wallTimeOf(instantOf({ date, time }, 'UTC'), places.shownZone), timeZone: places.shownZone };
  }
  const known = places.zones.of(zone.tzid);
  if (known.kind === 'iana') return { date, time, timeZone: known.name };
  const ms = instantByRules({ date, time }, known.timezone);
  return { ...wallTimeOf(ms, places.kitchenZone), timeZone: places.kitchenZone };
}

function instantByRules(wall: { date: CalendarDate; time: ClockTime }, timezone: ICAL.Timezone): number {
  const local = ICAL.Time.fromDateTimeString(`${wall.date}T${wall.time}:00`);
  local.zone = timezone;
  const seconds = local.toUnixTime();
  if (!Number.isFinite(seconds)) {
    throw new Problem('bad_file', 'the zone of this event cannot be worked out.', 'Type the game instead.');
  }
  return seconds * 1000;
}

/** The instant of a stamp; undefined for a date alone. */
export function stampMs(stamp: Stamp, places: Places): number | undefined {
  const { date, time, timeZone } = place(stamp, places);
  return time === undefined ? undefined : instantOf({ date, time }, timeZone);
}

/** One name for an instance of a rule however it is written: its instant in UTC, or its date. */
export function instanceKey(stamp: Stamp, places: Places): string {
  const ms = stampMs(stamp, places);
  return ms === undefined ? stamp.date : `${new Date(ms).toISOString().slice(0, 16)}Z`;
}
