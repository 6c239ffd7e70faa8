import { describe, expect, test } from 'vitest';
import {
  addDays,
  type CalendarDate,
  type ClockTime,
  daysBetween,
  instantOf,
  wallTimeOf,
  weekdayOf,
} from '../../src/kitchen/time/zone.ts';
import { byTheRule, CHANGES, QUARTER_MS } from './clock-changes.ts';

const at = (date: string, time: string) => ({ date: date as CalendarDate, time: time as ClockTime });
const iso = (ms: number): string => new Date(ms).toISOString().slice(0, 16);

describe('wall times around every clock change of 2026 to 2028', () => {
  test.each(CHANGES)('%s at %s: every quarter hour of two days', (zone, change, before, after) => {
    const changeMs = Date.parse(`${change}Z`);
    let looked = 0;
    for (let wallMs = changeMs - 24 * 3_600_000; wallMs <= changeMs + 24 * 3_600_000; wallMs += QUARTER_MS) {
      const [date = '', time = ''] = iso(wallMs).split('T');
      expect(iso(instantOf(at(date, time), zone)), `${date} ${time} ${zone}`).toBe(
        iso(byTheRule(wallMs, changeMs, before, after)),
      );
      looked += 1;
    }
    expect(looked).toBe(193);
  });

  test.each(CHANGES)('%s at %s: an instant and its wall time agree', (zone, change, before, after) => {
    const changeMs = Date.parse(`${change}Z`);
    for (let ms = changeMs - 6 * 3_600_000; ms <= changeMs + 6 * 3_600_000; ms += QUARTER_MS) {
      const offset = ms < changeMs ? before : after;
      const wall = wallTimeOf(ms, zone);
      expect(`${wall.date}T${wall.time}`).toBe(iso(ms + offset * 60_000));
    }
  });
});

describe('worked examples', () => {
  test('RFC 5545 §3.3.5: 01:30 on 4 November 2007 in New York is the first, daylight, occurrence', () => {
    expect(iso(instantOf(at('2007-11-04', '01:30'), 'America/New_York'))).toBe('2007-11-04T05:30');
  });

  test('RFC 5545 §3.3.5: 02:30 on 11 March 2007 in New York does not exist and is 03:30 daylight time', () => {
    expect(iso(instantOf(at('2007-03-11', '02:30'), 'America/New_York'))).toBe('2007-03-11T07:30');
  });

  test('a day back keeps the wall time; 24 hours back does not (RFC 5545 §3.3.6, tz 2025b)', () => {
    const kickoff = instantOf(at('2026-11-01', '12:00'), 'America/Chicago');
    expect(iso(instantOf(at(addDays('2026-11-01' as CalendarDate, -1), '12:00'), 'America/Chicago'))).toBe(
      '2026-10-31T17:00',
    );
    expect(wallTimeOf(kickoff - 24 * 3_600_000, 'America/Chicago')).toEqual(at('2026-10-31', '13:00'));
  });

  test('dates count as calendar days over a clock change and a leap day', () => {
    expect(addDays('2026-10-28' as CalendarDate, 6)).toBe('2026-11-03');
    expect(addDays('2028-02-26' as CalendarDate, 6)).toBe('2028-03-03');
    expect(daysBetween('2027-02-26' as CalendarDate, '2027-03-04' as CalendarDate)).toBe(6);
  });

  test('ISO 8601 weekdays: 2025-12-29 is a Monday, 2026-09-05 a Saturday, 2027-01-01 a Friday', () => {
    expect(['2025-12-29', '2026-09-05', '2027-01-01'].map((d) => weekdayOf(d as CalendarDate))).toEqual([
      1, 6, 5,
    ]);
  });
});
