import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Game, GameBook } from '../../src/kitchen/games/game.ts';
import type { CalendarDate } from '../../src/kitchen/time/zone.ts';
import type { Database } from '../../src/store/database.ts';
import { gameBooksIn } from '../../src/store/game-book.ts';
import { freshDatabase } from '../helpers/database.ts';
import { gameOn } from '../helpers/games.ts';

let database: Database;
const book = (workspace: string): GameBook => gameBooksIn(database)(workspace);
const day = (text: string): CalendarDate => text as CalendarDate;

beforeAll(async () => {
  database = await freshDatabase();
});
afterAll(() => database.close());

const FULL: Game = {
  ...gameOn('2026-12-05', '14:00'),
  id: 'full',
  calendarId: 'soccer',
  recurrenceId: '2026-12-04T14:00',
  sequence: 3,
  stampMs: 1_790_000_000_000,
  sport: 'soccer',
  place: 'North Field',
  departsMs: 1_796_500_000_000,
  people: 44,
  recipeId: 'oat-bars',
  status: 'cancelled',
  updatedMs: 1_796_000_000_000,
  was: { date: day('2026-12-04'), status: 'planned', changedMs: 1_796_000_000_000 },
  calendarSays: 'word',
  missingMs: 1_796_000_000_001,
};

test('a game comes back as it was put, with all that is known or with nothing but its date', async () => {
  const bare = gameOn('2026-12-06', undefined);
  await book('A').put([FULL, bare]);
  expect(await book('A').get('full')).toEqual(FULL);
  expect(await book('A').get(bare.id)).toEqual(bare);
  expect(await book('A').get('other')).toBeUndefined();
});

test('putting a game again replaces it whole: what is no longer known is gone', async () => {
  await book('B').put([FULL]);
  const { place: _place, ...without } = FULL;
  await book('B').put([{ ...without, title: 'Moved' }]);
  expect(await book('B').get('full')).toEqual({ ...without, title: 'Moved' });
});

test('games between two dates come earliest first, both dates included, cancelled ones too', async () => {
  await book('C').put([
    gameOn('2026-12-07', '09:00'),
    gameOn('2026-12-05', '19:00', { status: 'cancelled' }),
    gameOn('2026-12-05', '09:00'),
    gameOn('2026-12-05', undefined),
    gameOn('2026-12-08', '09:00'),
    gameOn('2026-12-04', '09:00'),
  ]);
  const found = await book('C').between(day('2026-12-05'), day('2026-12-07'));
  expect(found.map(({ date, time }) => [date, time])).toEqual([
    ['2026-12-05', undefined],
    ['2026-12-05', '09:00'],
    ['2026-12-05', '19:00'],
    ['2026-12-07', '09:00'],
  ]);
});

test('all or none: one game that cannot be kept leaves the book as it was', async () => {
  const broken = { ...gameOn('2026-12-09', '09:00'), title: undefined } as unknown as Game;
  await expect(book('D').put([gameOn('2026-12-08', '09:00'), broken])).rejects.toThrow();
  expect(await book('D').between(day('2026-01-01'), day('2027-12-31'))).toEqual([]);
});

test('a season of 2,000 games is put and read in order', async () => {
  const season = Array.from({ length: 2_000 }, (_, i) =>
    gameOn('2026-12-05', '09:00', {
      id: `g${i}`,
      title: `T${String(i).padStart(4, '0')}`,
      calendarId: 'big',
    }),
  );
  await book('E').put(season);
  expect(await book('E').ofCalendar('big')).toEqual(season);
});

test('workspaces do not see one another', async () => {
  await book('F').put([gameOn('2026-12-05', '09:00')]);
  await book('F').putCalendar({ id: 'one', name: 'Soccer' });
  expect(await book('G').between(day('2026-01-01'), day('2027-12-31'))).toEqual([]);
  expect(await book('G').calendars()).toEqual([]);
});

test('a removed calendar takes its games with it and no others', async () => {
  await book('H').putCalendar({ id: 'one', name: 'Soccer' });
  await book('H').putCalendar({
    id: 'two',
    name: 'Rowing',
    url: 'https://example.org/rowing.ics',
    etag: '"7"',
    readMs: 1_796_000_000_000,
    nextReadMs: 1_796_000_360_000,
    problem: 'cut off',
  });
  await book('H').putCalendar({ id: 'one', name: 'Soccer again', reads: 1 });
  expect((await book('H').calendars()).map(({ name }) => name)).toEqual(['Rowing', 'Soccer again']);
  await book('H').put([
    gameOn('2026-12-05', '09:00', { calendarId: 'one' }),
    gameOn('2026-12-06', '09:00', { calendarId: 'two' }),
    gameOn('2026-12-07', '09:00'),
  ]);
  await book('H').removeCalendar('two');
  expect((await book('H').between(day('2026-01-01'), day('2027-12-31'))).map(({ date }) => date)).toEqual([
    '2026-12-05',
    '2026-12-07',
  ]);
  expect((await book('H').calendars()).map(({ id }) => id)).toEqual(['one']);
});
