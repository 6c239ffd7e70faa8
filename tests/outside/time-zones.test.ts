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

const QUARTER_MS = 15 * 60_000;
const at = (date: string, time: string) => ({ date: date as CalendarDate, time: time as ClockTime });
const iso = (ms: number): string => new Date(ms).toISOString().slice(0, 16);

/**
 * Clock changes 2026 to 2028: [zone, instant of change (UTC), minutes of offset before, after].
 * Source: IANA tz database 2025b, rules US (second Sunday of March to first Sunday of November, 02:00 local),
 * EU/GB-Eire (last Sundays of March and October, 01:00 UTC), LH (first Sundays of October and April, 02:00 local,
 * half an hour). America/Phoenix has none.
 */
const CHANGES: readonly (readonly [string, string, number, number])[] = [
  ['America/Chicago', '2026-03-08T08:00', -360, -300],
  ['America/Chicago', '2026-11-01T07:00', -300, -360],
  ['America/Chicago', '2027-03-14T08:00', -360, -300],
  ['America/Chicago', '2027-11-07T07:00', -300, -360],
  ['America/Chicago', '2028-03-12T08:00', -360, -300],
  ['America/Chicago', '2028-11-05T07:00', -300, -360],
  ['America/New_York', '2026-03-08T07:00', -300, -240],
  ['America/New_York', '2026-11-01T06:00', -240, -300],
  ['America/New_York', '2027-03-14T07:00', -300, -240],
  ['America/New_York', '2027-11-07T06:00', -240, -300],
  ['America/New_York', '2028-03-12T07:00', -300, -240],
  ['America/New_York', '2028-11-05T06:00', -240, -300],
  ['Europe/London', '2026-03-29T01:00', 0, 60],
  ['Europe/London', '2026-10-25T01:00', 60, 0],
  ['Europe/London', '2027-03-28T01:00', 0, 60],
  ['Europe/London', '2027-10-31T01:00', 60, 0],
  ['Europe/London', '2028-03-26T01:00', 0, 60],
  ['Europe/London', '2028-10-29T01:00', 60, 0],
  ['Australia/Lord_Howe', '2026-04-04T15:00', 660, 630],
  ['Australia/Lord_Howe', '2026-10-03T15:30', 630, 660],
  ['Australia/Lord_Howe', '2027-04-03T15:00', 660, 630],
  ['Australia/Lord_Howe', '2027-10-02T15:30', 630, 660],
  ['Australia/Lord_Howe', '2028-04-01T15:00', 660, 630],
  ['Australia/Lord_Howe', '2028-09-30T15:30', 630, 660],
  ['America/Phoenix', '2026-03-08T08:00', -420, -420],
  ['America/Phoenix', '2027-11-07T07:00', -420, -420],
];

/** RFC 5545 §3.3.5 worked out by hand from one change: the first instant that shows this wall time, else the offset before. */
function byTheRule(wallAsUtcMs: number, changeMs: number, before: number, after: number): number {
  const withBefore = wallAsUtcMs - before * 60_000;
  const withAfter = wallAsUtcMs - after * 60_000;
  if (withBefore < changeMs) return withBefore;
  return withAfter >= changeMs ? withAfter : withBefore;
}

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
