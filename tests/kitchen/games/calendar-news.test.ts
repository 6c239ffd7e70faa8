import { sql } from 'kysely';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { FetchCalendar } from '../../../src/kitchen/games/calendar/reach.ts';
import { tellCalendarNews } from '../../../src/kitchen/games/calendar-news.ts';
import { importAddress } from '../../../src/kitchen/games/import-calendar.ts';
import { ReadMeanwhile } from '../../../src/kitchen/games/read-meanwhile.ts';
import { calendarDate } from '../../../src/kitchen/time/zone.ts';
import { Problem } from '../../../src/nutrition/problem.ts';
import { calendarOf } from '../../helpers/calendars.ts';
import {
  at,
  book,
  HOUR,
  MINUTE,
  type ReminderKitchen,
  reminderKitchen,
} from '../../helpers/reminder-kitchen.ts';

const NOW = at('2026-12-01 09:00');
const event = (uid: string, start: string, name: string) => [
  `UID:${uid}`,
  `DTSTART;TZID=America/Chicago:${start}`,
  `SUMMARY:Soccer vs ${name}`,
];
const feed =
  (...events: string[][]): FetchCalendar =>
  async () => ({ kind: 'read', bytes: calendarOf(events) });
const before = feed(event('a', '20261205T140000', 'Riverton'), event('b', '20261212T110000', 'Mill Bay'));
const after = feed(event('a', '20261206T160000', 'Riverton'), event('c', '20261219T110000', 'Cedar Point'));

let kitchen: ReminderKitchen;
beforeAll(async () => {
  kitchen = await reminderKitchen();
  const { games } = kitchen.parts.books;
  await importAddress(
    { games, settings: book.settings, nowMs: NOW },
    before,
    'https://example.org/soccer.ics',
  );
  await kitchen.tick(NOW);
  kitchen.channel.read();
});
afterAll(() => kitchen.database.close());

const desk = (fetchCalendar: FetchCalendar) => ({
  games: kitchen.parts.books.games,
  settings: book.settings,
  fetchCalendar,
});
const news = (): string[] => kitchen.channel.titles().filter((title) => title.startsWith('soccer.ics'));

test('a feed read again tells once what moved, what is no longer listed and what is new', async () => {
  const due = NOW + HOUR;
  expect(
    await Promise.all([tellCalendarNews(desk(after), due), tellCalendarNews(desk(after), due)]),
  ).not.toEqual([0, 0]);
  await kitchen.tick(due + MINUTE);
  const told = news();
  expect(told).toHaveLength(1);
  expect(told[0]).toContain('soccer vs Riverton moved: Sun Dec 6, 4:00 pm CST, was Sat Dec 5, 2:00 pm CST');
  expect(told[0]).toContain('vs Mill Bay (home) is no longer listed: cancel it if it is off');
  expect(told[0]).toContain('new: Sat Dec 19, 11:00 am CST: soccer vs Cedar Point (home)');
});

test('the same feed an hour later is no news', async () => {
  expect(await tellCalendarNews(desk(after), NOW + 2 * HOUR)).toBe(0);
});

test('news that cannot be written leaves the games as they were, so that the next reading tells it', async () => {
  const { database, parts } = kitchen;
  const again = feed(event('a', '20261207T180000', 'Riverton'), event('c', '20261219T110000', 'Cedar Point'));
  const riverton = async () =>
    (await parts.books.games.between(calendarDate('2026-12-01'), calendarDate('2026-12-31'))).find(
      ({ opponent }) => opponent === 'Riverton',
    )?.date;
  const calendars = await parts.books.games.calendars();
  await sql`alter table reminders rename to reminders_away`.execute(database.db);
  try {
    await expect(tellCalendarNews(desk(again), NOW + 3 * HOUR)).rejects.toThrow(/reminders/);
  } finally {
    await sql`alter table reminders_away rename to reminders`.execute(database.db);
  }
  expect(await riverton()).toBe('2026-12-06');
  expect(await parts.books.games.calendars()).toEqual(calendars);

  expect(await tellCalendarNews(desk(again), NOW + 3 * HOUR + MINUTE)).toBe(1);
  expect(await riverton()).toBe('2026-12-07');
  await kitchen.tick(NOW + 3 * HOUR + 2 * MINUTE);
  expect(news()[0]).toContain('soccer vs Riverton moved: Mon Dec 7, 6:00 pm CST, was Sun Dec 6, 4:00 pm CST');
});

test('a feed that breaks is told, with what becomes of its games', async () => {
  const down: FetchCalendar = async () => {
    throw new Problem('unavailable', 'The address cannot be reached.', 'Try later.');
  };
  await tellCalendarNews(desk(down), NOW + 5 * HOUR);
  await kitchen.tick(NOW + 5 * HOUR + MINUTE);
  expect(news()[0]).toContain('could not be read again: The address cannot be reached. Its games stay');
});

test('a game that moves away, back, and away again is told each time', async () => {
  const start = NOW + 10 * HOUR;
  const away = feed(event('z', '20261213T100000', 'Cedar Point'));
  const back = feed(event('z', '20261212T100000', 'Cedar Point'));
  await tellCalendarNews(desk(back), start);
  await kitchen.tick(start + MINUTE);
  news();
  const told: string[] = [];
  for (const [hour, read] of [away, back, away, back].entries()) {
    const due = start + (hour + 1) * HOUR;
    await Promise.all([1, 2, 3].map(() => tellCalendarNews(desk(read), due)));
    await kitchen.tick(due + MINUTE);
    told.push(...news());
  }
  expect(told.map((title) => /moved: (\w+ \w+ \d+)/.exec(title)?.[1])).toEqual([
    'Sun Dec 13',
    'Sat Dec 12',
    'Sun Dec 13',
    'Sat Dec 12',
  ]);
});

test('a reading worked out from an older state of the calendar writes nothing', async () => {
  const { games } = kitchen.parts.books;
  const [calendar] = await games.calendars();
  if (!calendar) throw new Error('No calendar.');
  const stale = { ...calendar, name: 'Stale' };
  await expect(games.putRead({ calendar: stale, games: [] }, NOW)).rejects.toThrow(ReadMeanwhile);
  expect(await games.calendars()).toEqual([calendar]);
});
