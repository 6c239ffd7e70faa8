import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { MOST_BYTES } from '../../../src/kitchen/games/calendar/limits.ts';
import { readCalendar } from '../../../src/kitchen/games/calendar/read-calendar.ts';
import { CONTEXT, calendarFile, calendarOf, readEvents, readFile, whenOf } from '../../helpers/calendars.ts';

const TWO = ['2026-12-05 14:00 America/Chicago', '2026-12-12 11:00 America/Chicago'];

describe('files as they are found', () => {
  test.each(['plain', 'cr-cr-lf', 'bare-lf', 'bare-cr', 'byte-order-mark', 'utf-16', 'stray-html'])(
    '%s: both games are read',
    (name) => {
      const reading = readFile(name);
      expect(reading.games.map(whenOf)).toEqual(TWO);
      expect(reading.games.map(({ opponent, side }) => [opponent, side])).toEqual([
        ['Riverton', 'home'],
        ['Mill Bay', 'away'],
      ]);
      expect(reading.games[0]?.place).toBe('North Field');
      expect(reading).toMatchObject({ problems: [], complete: true });
    },
  );

  test('a calendar that describes its zone needs no word about it', () => {
    expect(readFile('plain').notes).toEqual([]);
  });

  test('stray HTML is counted and its first line said', () => {
    expect(readFile('stray-html').notes.join('\n')).toContain(
      '3 lines that are no calendar lines were left out (line 10 first)',
    );
  });

  test('Windows-1252 bytes become the letters and quotes they stand for', () => {
    const [game] = readFile('windows-1252').games;
    expect(game?.title).toBe('Soccer vs San José – “Final”');
    expect(game).toMatchObject({ opponent: 'San José', place: 'Café Field' });
  });

  test('folds by tab or space, in the middle of a value or of a character, are undone', () => {
    expect(readFile('tab-folding').games[0]).toMatchObject({
      opponent: 'Riverton',
      time: '14:00',
      place: 'North Field',
    });
    expect(readFile('fold-in-character').games[0]?.opponent).toBe('San José');
  });

  test('a misplaced quote costs nothing, and the repaired line is said', () => {
    const { games, notes, problems } = readFile('misplaced-quote');
    expect(games.map(({ opponent }) => opponent)).toEqual(['Riverton', 'Mill Bay', 'Stone Bridge']);
    expect(games.map(({ time }) => time)).toEqual(['14:00', '11:00', '11:00']);
    expect(games[0]?.place).toBe('North Field');
    expect(notes.join('\n')).toMatch(/Line 9 and 1 more had to be repaired/);
    expect(problems).toEqual([]);
  });

  test('text escapes and nested alarms are read as the standard says', () => {
    expect(readFile('escapes').games[0]).toMatchObject({
      opponent: 'Riverton, Upper School',
      place: 'North Field; gate 2 Bring keys',
    });
    expect(readFile('nested-alarm').games[0]?.title).toBe('Soccer vs Riverton');
  });
});

describe('zones', () => {
  test('a zone that is not described is the one of that name, and that is said', () => {
    const { games, notes } = readFile('zone-without-vtimezone');
    expect(games.map(whenOf)).toEqual(['2026-12-05 15:00 America/New_York']);
    expect(notes[0]).toContain('"America/New_York"');
  });

  test('Windows names and what those programs show are understood', () => {
    expect(readFile('windows-zone').games.map(whenOf)).toEqual([
      '2026-12-05 14:00 America/Chicago',
      '2026-12-05 15:00 America/New_York',
    ]);
  });

  test("a zone without rules is the kitchen's, and that is said", () => {
    const { games, notes } = readFile('zone-without-rules');
    expect(games.map(whenOf)).toEqual(['2026-12-05 14:00 America/Chicago']);
    expect(notes[0]).toContain('"Campus Time" has no rules');
  });

  test("a zone only the file knows is worked out by the file's own rules, summer and winter", () => {
    const { games } = readFile('own-zone-rules', { timeZone: 'America/Denver' });
    expect(games.map(whenOf)).toEqual(['2026-09-05 13:00 America/Denver', '2026-12-05 13:00 America/Denver']);
  });

  test('UTC, floating, all-day, a date without VALUE, a time called a date, a numeric offset', () => {
    expect(readFile('utc-floating-allday').games.map(whenOf)).toEqual([
      '2026-12-05 14:00 America/Chicago',
      '2026-12-06 14:00 America/Chicago',
      '2026-12-07 America/Chicago',
      '2026-12-08 America/Chicago',
      '2026-12-09 14:00 America/Chicago',
      '2026-12-10 14:00 America/Chicago',
    ]);
  });

  test("floating times are the kitchen's, wherever that is", () => {
    expect(
      readEvents([['UID:a', 'DTSTART:20261206T140000', 'SUMMARY:vs Riverton']], {
        timeZone: 'America/Phoenix',
      }).games.map(whenOf),
    ).toEqual(['2026-12-06 14:00 America/Phoenix']);
  });
});

test('a time not announced is a day without a time; an evening game at 00:00 UTC with an end is believed', () => {
  const { games, notes } = readFile('not-announced');
  expect(games.map(whenOf)).toEqual([
    '2026-12-05 America/Chicago',
    '2026-12-11 18:00 America/Chicago',
    '2026-12-13 America/Chicago',
    '2026-12-14 18:00 America/Chicago',
    '2026-12-19 America/Chicago',
    '2026-12-20 America/Chicago',
    '2026-12-21 America/Chicago',
    '2026-12-22 12:00 America/Chicago',
  ]);
  expect(notes[0]).toBe(
    'Soccer vs Riverton: midnight UTC was read as "time not announced" on Sat Dec 5, and not as Fri Dec 4 6:00 pm CST.',
  );
  expect(games[3]?.opponent).toBeUndefined();
});

describe('rules', () => {
  test('weekly in local time over the change of clocks, without the excluded, with the moved and the cancelled', () => {
    const { games } = readFile('recurring');
    expect(games.map((game) => [whenOf(game), game.status])).toEqual([
      ['2026-10-30 18:00 America/Chicago', 'planned'],
      ['2026-11-12 19:00 America/Chicago', 'planned'],
      ['2026-11-20 18:00 America/Chicago', 'cancelled'],
      ['2026-11-27 18:00 America/Chicago', 'planned'],
    ]);
  });

  test('a million recurrences, seconds, a day that never comes, a rule from 1970: each stops early and is said', () => {
    const { games, problems, notes } = readFile('endless-rules');
    const riverton = games.filter(({ opponent }) => opponent === 'Riverton');
    expect(riverton).toHaveLength(391);
    expect(notes[0]).toContain('"Soccer vs Riverton" repeats on and on');
    expect(problems.map(({ line }) => line)).toEqual([11, 18, 25]);
    expect(games.map(({ opponent }) => opponent)).toContain('Fern Hollow');
  });

  test('two hundred endless rules in one file end too, together', () => {
    const endless = Array.from({ length: 200 }, (_, i) => [
      `UID:${i}`,
      'DTSTART:20261205T140000',
      'SUMMARY:vs Riverton',
      'RRULE:FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30',
    ]);
    const { problems } = readEvents([
      ...endless,
      ['UID:z', 'DTSTART:20261206T140000', 'SUMMARY:at Mill Bay'],
    ]);
    expect(problems.length).toBe(50);
    expect(problems.at(-1)?.message).toContain('repeat too often');
  }, 20_000);
});

test('cancelled by STATUS, or by the title alone, in the ways people write it', () => {
  const { games } = readFile('cancelled');
  expect(games.map(({ status }) => status)).toEqual([...Array(5).fill('cancelled'), 'planned']);
  expect(games.map(({ opponent }) => opponent)).toEqual([
    'Riverton',
    'Mill Bay',
    'Stone Bridge',
    'Cedar Point',
    'Grey Harbor',
    'Fern Hollow',
  ]);
  const method = readCalendar(
    calendarOf([['UID:a', 'DTSTART:20261206T140000', 'SUMMARY:vs Riverton']], ['METHOD:CANCEL']),
    CONTEXT,
  );
  expect(method.games[0]?.status).toBe('cancelled');
});

test('several sports in one feed: sport, opponent and side from the title, the category, the name of the file', () => {
  const { games, notes } = readFile('several-sports');
  expect(games.map(({ sport, opponent, side }) => [sport, opponent, side])).toEqual([
    ["women's soccer", 'Riverton', 'home'],
    ['volleyball', 'Mill Bay', 'away'],
    ["men's basketball", 'Stone Bridge', 'home'],
    ['football', 'Cedar Point', 'home'],
    ['swimming', undefined, undefined],
    ['softball', 'Fern Hollow', 'neutral'],
    ['baseball', 'Pine Ridge', 'home'],
  ]);
  expect(notes[0]).toBe('1 left out that is no game: Soccer practice.');
  const plain = [['UID:a', 'DTSTART:20261206T140000', 'SUMMARY:at Mill Bay']];
  expect(readEvents(plain, { source: 'https://example.org/womens-golf.ics' }).games[0]?.sport).toBe(
    "women's golf",
  );
});

test('versions of one game: the higher SEQUENCE, then the later DTSTAMP', () => {
  expect(readFile('updates').games.map(whenOf)).toEqual([
    '2026-12-06 16:00 America/Chicago',
    '2026-12-12 13:00 America/Chicago',
  ]);
});

test('a program that gives every event one UID does not lose games', () => {
  expect(readFile('one-uid-for-all').games.map(({ opponent }) => opponent)).toEqual(['Riverton', 'Mill Bay']);
});

describe('what cannot be read', () => {
  test('each broken event is reported with its line, and the others are read', () => {
    const { games, problems, complete } = readFile('one-broken-event');
    expect(games.map(({ opponent }) => opponent)).toEqual(['Riverton', 'Fern Hollow']);
    expect(problems.map(({ line, message }) => `${line}: ${message}`)).toEqual([
      '10: "Soccer at Mill Bay" was left out: its DTSTART is not a date.',
      '16: "Soccer vs Stone Bridge" was left out: it has no DTSTART, so no day.',
      '22: "Soccer vs Cedar Point" was left out: its RRULE (line 27) cannot be read.',
      '29: "Soccer vs Grey Harbor" was left out: its DTSTART is not a date.',
    ]);
    for (const { hint } of problems) expect(hint).toContain('The other games were read');
    expect(complete).toBe(false);
  });

  test('a file cut off in the middle of a line keeps what is whole and says where it ends', () => {
    const { games, problems, complete } = readFile('cut-off');
    expect(games.map(({ opponent }) => opponent)).toEqual(['Riverton']);
    expect(problems).toMatchObject([{ line: 11, message: expect.stringContaining('does not end') }]);
    expect(complete).toBe(false);
    expect(readFile('no-end')).toMatchObject({ complete: false, problems: [{ line: 16 }] });
  });

  test('a web page, an empty file, an archive and 50 MB are refused with what to do', () => {
    const refused = (bytes: Uint8Array): unknown => {
      try {
        return readCalendar(bytes, CONTEXT);
      } catch (error) {
        return error;
      }
    };
    expect(refused(calendarFile('web-page'))).toMatchObject({
      code: 'bad_file',
      message: 'This is a web page, not a calendar.',
      hint: expect.stringContaining('.ics'),
    });
    expect(refused(Buffer.alloc(0))).toMatchObject({ code: 'bad_file', message: 'This calendar is empty.' });
    expect(refused(Buffer.from('PK\x03\x04 something'))).toMatchObject({
      message: expect.stringContaining('no BEGIN:VCALENDAR'),
    });
    expect(refused(Buffer.alloc(50 * 1024 * 1024, 'x'))).toMatchObject({
      message: 'This calendar is 50.0 MB; I read at most 5 MB.',
    });
    const many = Buffer.from(
      `BEGIN:VCALENDAR\n${'BEGIN:VEVENT\nEND:VEVENT\n'.repeat(20_001)}END:VCALENDAR\n`,
    );
    expect(many.length).toBeLessThan(MOST_BYTES);
    expect(refused(many)).toMatchObject({ message: 'This calendar has more than 20,000 events.' });
  });

  test('whatever the bytes, a file is read or refused with a Problem, never with another error', () => {
    const files = readdirSync(new URL('../calendars/', import.meta.url))
      .filter((file) => !file.startsWith('endless'))
      .map((file) => calendarFile(file.replace('.ics', '')));
    let seed = 7;
    const random = (below: number): number => {
      seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648;
      return seed % below;
    };
    for (let round = 0; round < 600; round++) {
      const bytes = Buffer.from(files[round % files.length] ?? Buffer.alloc(0));
      for (let hits = 0; hits < 6; hits++) bytes[random(bytes.length)] = random(256);
      try {
        for (const game of readCalendar(bytes.subarray(0, bytes.length - random(40)), CONTEXT).games) {
          expect(game.date).toMatch(/^\d{4}-\d\d-\d\d$/);
        }
      } catch (error) {
        expect(error).toMatchObject({ name: 'Problem' });
      }
    }
  }, 60_000);
});
