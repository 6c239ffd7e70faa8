import { expect, test } from 'vitest';
import { cutIntoBlocks } from '../../src/kitchen/games/calendar/blocks.ts';
import { calendarLines } from '../../src/kitchen/games/calendar/lines.ts';
import { readCalendar } from '../../src/kitchen/games/calendar/read-calendar.ts';
import { readEvent } from '../../src/kitchen/games/calendar/read-event.ts';
import type { ToldGame } from '../../src/kitchen/games/calendar/reading.ts';
import { compareVersions } from '../../src/kitchen/games/calendar/versions.ts';
import { windowsZone } from '../../src/kitchen/games/calendar/windows-zones.ts';
import { instantOf, isTimeZone, wallTimeOf, zoneName } from '../../src/kitchen/time/zone.ts';
import { CONTEXT, calendarOf } from '../helpers/calendars.ts';

const ON_1997 = { ...CONTEXT, timeZone: 'America/New_York', nowMs: Date.parse('1997-09-10T12:00:00Z') };

const gamesOf = (lines: readonly string[], context = CONTEXT): readonly ToldGame[] =>
  readCalendar(calendarOf([['UID:a', 'SUMMARY:vs Riverton', ...lines]]), context).games;

/** The instant of a game in UTC, to the minute. */
const utc = ({ date, time, timeZone }: ToldGame): string =>
  time === undefined ? date : new Date(instantOf({ date, time }, timeZone)).toISOString().slice(0, 16);

const days = (games: readonly ToldGame[]): string[] => games.map(({ date }) => date.slice(5));

test('RFC 5545 §3.1: the folded line of the text unfolds to one', () => {
  const folded =
    'BEGIN:VCALENDAR\r\nDESCRIPTION:This is a lo\r\n ng description\r\n  that exists on a long line.\r\n';
  expect(calendarLines(Buffer.from(folded))[1]?.text).toBe(
    'DESCRIPTION:This is a long description that exists on a long line.',
  );
});

test('RFC 5545 §3.3.11: \\n in a text is a new line', () => {
  const bytes = calendarOf([
    [
      'UID:a',
      'DTSTART:20261205T140000',
      'DESCRIPTION:Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.',
    ],
  ]);
  const [block] = cutIntoBlocks(calendarLines(bytes)).blocks;
  expect(block && readEvent(block).description.split('\n')).toEqual([
    'Project XYZ Final Review',
    'Conference Room - 3B',
    'Come Prepared.',
  ]);
});

test('RFC 5545 §3.3.5: a time that occurs twice is the first, one that does not exist uses the offset before', () => {
  expect(gamesOf(['DTSTART;TZID=America/New_York:20071104T013000']).map(utc)).toEqual(['2007-11-04T05:30']);
  expect(gamesOf(['DTSTART;TZID=America/New_York:20070311T023000']).map(utc)).toEqual(['2007-03-11T07:30']);
});

test('RFC 5545 §3.3.5: 14 July 1997, 1:30 pm in New York, in the three forms', () => {
  for (const start of [
    'DTSTART:19970714T133000',
    'DTSTART:19970714T173000Z',
    'DTSTART;TZID=America/New_York:19970714T133000',
  ]) {
    expect(gamesOf([start], ON_1997).map(utc)).toEqual(['1997-07-14T17:30']);
  }
});

test('RFC 5545 §3.8.5.3: daily until December 24, 1997: 9:00 am EDT to October 25, EST from October 26', () => {
  const games = gamesOf(
    ['DTSTART;TZID=America/New_York:19970902T090000', 'RRULE:FREQ=DAILY;UNTIL=19971224T000000Z'],
    ON_1997,
  );
  expect(games).toHaveLength(113);
  expect(games.at(-1)?.date).toBe('1997-12-23');
  const named = games.map(({ date, time, timeZone }) => [
    date,
    zoneName(instantOf({ date, time: time as never }, timeZone), timeZone),
  ]);
  expect(named.filter(([, zone]) => zone === 'EDT').at(-1)).toEqual(['1997-10-25', 'EDT']);
  expect(named.find(([, zone]) => zone === 'EST')).toEqual(['1997-10-26', 'EST']);
  expect(new Set(games.map(({ time }) => time))).toEqual(new Set(['09:00']));
});

test('RFC 5545 §3.8.5.3: weekly for ten occurrences', () => {
  const games = gamesOf(
    ['DTSTART;TZID=America/New_York:19970902T090000', 'RRULE:FREQ=WEEKLY;COUNT=10'],
    ON_1997,
  );
  expect(days(games)).toEqual([
    '09-02',
    '09-09',
    '09-16',
    '09-23',
    '09-30',
    '10-07',
    '10-14',
    '10-21',
    '10-28',
    '11-04',
  ]);
});

test('RFC 5545 §3.8.5.3: weekly on Tuesday and Thursday, COUNT=10;WKST=SU', () => {
  const games = gamesOf(
    ['DTSTART;TZID=America/New_York:19970902T090000', 'RRULE:FREQ=WEEKLY;COUNT=10;WKST=SU;BYDAY=TU,TH'],
    ON_1997,
  );
  expect(days(games)).toEqual([
    '09-02',
    '09-04',
    '09-09',
    '09-11',
    '09-16',
    '09-18',
    '09-23',
    '09-25',
    '09-30',
    '10-02',
  ]);
});

test('RFC 5545 §3.6.1: a festival of whole days, end exclusive, has its first day and no time', () => {
  const [game] = gamesOf(['DTSTART;VALUE=DATE:20070628', 'DTEND;VALUE=DATE:20070709']);
  expect(game?.date).toBe('2007-06-28');
  expect(game?.time).toBeUndefined();
});

test('IANA tz 2025b, rule US: 02:30 on 8 March and 01:30 on 1 November 2026 in Chicago', () => {
  expect(gamesOf(['DTSTART;TZID=America/Chicago:20260308T023000']).map(utc)).toEqual(['2026-03-08T08:30']);
  expect(gamesOf(['DTSTART;TZID=America/Chicago:20261101T013000']).map(utc)).toEqual(['2026-11-01T06:30']);
});

test('RFC 5545 §3.3.10 with tz 2025b: Sundays 18:00 in Chicago keep their hour over 1 November 2026', () => {
  const games = gamesOf(['DTSTART;TZID=America/Chicago:20261025T180000', 'RRULE:FREQ=WEEKLY;COUNT=3'], {
    ...CONTEXT,
    nowMs: Date.parse('2026-10-20T12:00:00Z'),
  });
  expect(games.map(utc)).toEqual(['2026-10-25T23:00', '2026-11-02T00:00', '2026-11-09T00:00']);
});

test('RFC 5545 §3.8.4.4: a weekly game moved from Friday to Thursday keeps the Friday as its name', () => {
  const bytes = calendarOf([
    [
      'UID:a',
      'SUMMARY:vs Riverton',
      'DTSTART;TZID=America/Chicago:20261127T180000',
      'RRULE:FREQ=WEEKLY;COUNT=2',
    ],
    [
      'UID:a',
      'SUMMARY:vs Riverton',
      'DTSTART;TZID=America/Chicago:20261203T180000',
      'RECURRENCE-ID;TZID=America/Chicago:20261204T180000',
    ],
  ]);
  expect(readCalendar(bytes, CONTEXT).games.map(({ date, recurrenceId }) => [date, recurrenceId])).toEqual([
    ['2026-11-27', '2026-11-28T00:00Z'],
    ['2026-12-03', '2026-12-05T00:00Z'],
  ]);
});

test('RFC 5545 §3.8.5.1: EXDATE wins over the rule', () => {
  const games = gamesOf(
    [
      'DTSTART;TZID=America/New_York:19970902T090000',
      'RRULE:FREQ=WEEKLY;COUNT=3',
      'EXDATE;TZID=America/New_York:19970909T090000',
    ],
    ON_1997,
  );
  expect(days(games)).toEqual(['09-02', '09-16']);
});

test('RFC 5545 §3.3.6: PT2H after 11 pm is the next day; a duration never moves the start', () => {
  expect(gamesOf(['DTSTART;TZID=America/Chicago:20261205T230000', 'DURATION:PT2H']).map(utc)).toEqual([
    '2026-12-06T05:00',
  ]);
});

// RFC 5546 §2.1.5, from memory.
test('the copy with the higher SEQUENCE wins, then the later DTSTAMP', () => {
  expect(compareVersions({ sequence: 2, stampMs: 1 }, { sequence: 1, stampMs: 9 })).toBeGreaterThan(0);
  expect(compareVersions({ sequence: 1, stampMs: 1 }, { sequence: 1, stampMs: 9 })).toBeLessThan(0);
});

// Unicode CLDR, common/supplemental/windowsZones.xml, territory 001.
test.each([
  ['Central Standard Time', 'America/Chicago'],
  ['Eastern Standard Time', 'America/New_York'],
  ['Mountain Standard Time', 'America/Denver'],
  ['US Mountain Standard Time', 'America/Phoenix'],
  ['Pacific Standard Time', 'America/Los_Angeles'],
  ['Alaskan Standard Time', 'America/Anchorage'],
  ['Hawaiian Standard Time', 'Pacific/Honolulu'],
  ['US Eastern Standard Time', 'America/Indianapolis'],
  ['Central Standard Time (Mexico)', 'America/Mexico_City'],
  ['GMT Standard Time', 'Europe/London'],
  ['Lord Howe Standard Time', 'Australia/Lord_Howe'],
])('the Windows zone %s is %s, which this machine knows', (name, zone) => {
  expect(windowsZone(name)).toBe(zone);
  expect(isTimeZone(zone)).toBe(true);
  expect(wallTimeOf(0, zone).date).toMatch(/^19(69|70)-/);
});
