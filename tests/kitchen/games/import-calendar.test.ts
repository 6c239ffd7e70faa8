import { afterAll, beforeAll, expect, test } from 'vitest';
import type { FetchCalendar } from '../../../src/kitchen/games/calendar/reach.ts';
import { importAddress, readDueCalendars } from '../../../src/kitchen/games/import-calendar.ts';
import { Problem } from '../../../src/nutrition/problem.ts';
import type { Database } from '../../../src/store/database.ts';
import { gameBooksIn } from '../../../src/store/game-book.ts';
import { calendarFile } from '../../helpers/calendars.ts';
import { freshDatabase } from '../../helpers/database.ts';
import { pantryKitchen } from '../../helpers/pantry-kitchen.ts';

const NOW = Date.parse('2026-11-25T15:00:00Z');
const HOUR = 3_600_000;
const URL = 'https://example.org/soccer.ics';
const { settings } = pantryKitchen().book;
let database: Database;
beforeAll(async () => {
  database = await freshDatabase();
});
afterAll(() => database.close());

const desk = (workspace: string, nowMs: number) => ({
  games: gameBooksIn(database)(workspace),
  settings,
  nowMs,
});
const plain: FetchCalendar = async () => ({ kind: 'read', bytes: calendarFile('plain') });

test('an address is due again an hour later, not before', async () => {
  await importAddress(desk('A', NOW), plain, URL);
  expect(await readDueCalendars(desk('A', NOW + HOUR - 1), plain)).toEqual([]);
  const [again] = await readDueCalendars(desk('A', NOW + HOUR), plain);
  expect(again?.result?.counts).toMatchObject({ added: 0, unchanged: 2 });
  expect(await readDueCalendars(desk('A', NOW + HOUR + 1), plain)).toEqual([]);
});

test('a feed that is down keeps its games, is told once, and tried every hour until it is back', async () => {
  await importAddress(desk('B', NOW), plain, URL);
  const down: FetchCalendar = async () => {
    throw new Problem('unavailable', 'The address cannot be reached.', 'Try later.');
  };
  const [first] = await readDueCalendars(desk('B', NOW + HOUR), down);
  expect(first?.newProblem).toBe('The address cannot be reached.');
  const [second] = await readDueCalendars(desk('B', NOW + 2 * HOUR), down);
  expect(second?.newProblem).toBeUndefined();
  const [calendar] = await desk('B', NOW).games.calendars();
  expect(await desk('B', NOW).games.ofCalendar(calendar?.id ?? '')).toHaveLength(2);
  await readDueCalendars(desk('B', NOW + 3 * HOUR), plain);
  expect((await desk('B', NOW).games.calendars())[0]?.problem).toBeUndefined();
});

test('a feed that turns into a web page loses nothing', async () => {
  await importAddress(desk('C', NOW), plain, URL);
  const page: FetchCalendar = async () => ({ kind: 'read', bytes: calendarFile('web-page') });
  const [read] = await readDueCalendars(desk('C', NOW + HOUR), page);
  expect(read?.newProblem).toBe('This is a web page, not a calendar.');
  expect(
    (await desk('C', NOW).games.ofCalendar(read?.calendar.id ?? '')).every(
      ({ missingMs }) => missingMs === undefined,
    ),
  ).toBe(true);
});

test('two instances that read the same feed at once keep every game once', async () => {
  await Promise.all([importAddress(desk('D', NOW), plain, URL), importAddress(desk('D', NOW), plain, URL)]);
  const [calendar, ...others] = await desk('D', NOW).games.calendars();
  expect(others).toEqual([]);
  expect(await desk('D', NOW).games.ofCalendar(calendar?.id ?? '')).toHaveLength(2);
});
