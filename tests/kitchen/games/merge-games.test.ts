import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ToldGame } from '../../../src/kitchen/games/calendar/reading.ts';
import { latestVersions } from '../../../src/kitchen/games/calendar/versions.ts';
import type { Game } from '../../../src/kitchen/games/game.ts';
import { mergeGames } from '../../../src/kitchen/games/merge-games.ts';
import { type CalendarDate, type ClockTime, instantOf } from '../../../src/kitchen/time/zone.ts';

const TODAY = '2026-11-25' as CalendarDate;
const NOW = Date.parse('2026-11-25T15:00:00Z');

const told = (uid: string, date: string, time: string, more: Partial<ToldGame> = {}): ToldGame => ({
  uid,
  sequence: 0,
  title: `vs ${uid}`,
  opponent: uid,
  date: date as CalendarDate,
  time: time as ClockTime,
  timeZone: 'America/Chicago',
  status: 'planned',
  ...more,
});

/** The book after a reading is laid over it. */
function read(known: readonly Game[], games: readonly ToldGame[], complete = true, nowMs = NOW) {
  const merged = mergeGames('soccer', known, { games: latestVersions(games), complete }, nowMs, TODAY);
  const book = new Map(known.map((game) => [game.id, game]));
  for (const game of merged.put) book.set(game.id, game);
  return { ...merged, book: [...book.values()].sort((a, b) => (a.id < b.id ? -1 : 1)) };
}

const first = read([], [told('Riverton', '2026-12-05', '14:00'), told('Mill Bay', '2026-12-12', '11:00')]);
const kinds = ({ changes }: ReturnType<typeof read>): string[] =>
  changes.map(({ kind, game }) => `${kind} ${game.uid}`);

describe('reading a calendar again', () => {
  test('the same again changes nothing and writes nothing', () => {
    const again = read(first.book, [
      told('Riverton', '2026-12-05', '14:00'),
      told('Mill Bay', '2026-12-12', '11:00'),
    ]);
    expect(again).toMatchObject({ put: [], changes: [], unchanged: 2, missing: [] });
  });

  test('a move, a cancellation, a new game and a game back on are told apart', () => {
    const second = read(first.book, [
      told('Riverton', '2026-12-06', '14:00'),
      told('Mill Bay', '2026-12-12', '11:00', { status: 'cancelled' }),
      told('Stone Bridge', '2026-12-19', '11:00'),
    ]);
    expect(kinds(second)).toEqual(['moved Riverton', 'cancelled Mill Bay', 'added Stone Bridge']);
    expect(second.book.find(({ uid }) => uid === 'Riverton')?.was).toEqual({
      date: '2026-12-05',
      time: '14:00',
      status: 'planned',
      changedMs: NOW,
    });
    const third = read(second.book, [told('Mill Bay', '2026-12-12', '11:00')], false);
    expect(kinds(third)).toEqual(['restored Mill Bay']);
  });

  test('an older version changes nothing', () => {
    const newer = read(first.book, [told('Riverton', '2026-12-06', '14:00', { sequence: 2 })], false);
    const older = read(newer.book, [told('Riverton', '2026-12-05', '10:00', { sequence: 1 })], false);
    expect(older).toMatchObject({ put: [], unchanged: 1 });
  });

  test('what people changed by hand stays until the calendar itself says something new', () => {
    const byHand = first.book.map((game) =>
      game.uid === 'Riverton' ? { ...game, time: '15:00' as ClockTime, people: 30 } : game,
    );
    const same = read(byHand, [told('Riverton', '2026-12-05', '14:00', { stampMs: 5 })], false);
    expect(same.book.find(({ uid }) => uid === 'Riverton')).toMatchObject({ time: '15:00', people: 30 });
    const moved = read(same.book, [told('Riverton', '2026-12-05', '16:00', { stampMs: 6 })], false);
    expect(moved.book.find(({ uid }) => uid === 'Riverton')).toMatchObject({ time: '16:00', people: 30 });
  });

  test('a departure keeps its distance to the start', () => {
    const at = (date: string, time: string) =>
      instantOf({ date: date as CalendarDate, time: time as ClockTime }, 'America/Chicago');
    const leaving = first.book.map((game) =>
      game.uid === 'Riverton' ? { ...game, departsMs: at('2026-12-05', '11:30') } : game,
    );
    const moved = read(leaving, [told('Riverton', '2026-12-06', '16:00')], false);
    expect(moved.book.find(({ uid }) => uid === 'Riverton')?.departsMs).toBe(at('2026-12-06', '13:30'));
  });

  test('a game to come that is no longer listed stays, marked once and reported every time', () => {
    const second = read(first.book, [told('Mill Bay', '2026-12-12', '11:00')]);
    expect(second.missing.map(({ uid }) => uid)).toEqual(['Riverton']);
    expect(second.book.find(({ uid }) => uid === 'Riverton')).toMatchObject({
      status: 'planned',
      missingMs: NOW,
    });
    const third = read(second.book, [told('Mill Bay', '2026-12-12', '11:00')], true, NOW + 1);
    expect(third.missing.map(({ missingMs }) => missingMs)).toEqual([NOW]);
    expect(third.put).toEqual([]);
    const back = read(third.book, [
      told('Riverton', '2026-12-05', '14:00'),
      told('Mill Bay', '2026-12-12', '11:00'),
    ]);
    expect(back.book.find(({ uid }) => uid === 'Riverton')?.missingMs).toBeUndefined();
  });

  test('a broken or empty reading makes nobody miss a game, and a past game is not missed', () => {
    expect(read(first.book, [told('Mill Bay', '2026-12-12', '11:00')], false).missing).toEqual([]);
    expect(read(first.book, []).missing).toEqual([]);
    const past = read([], [told('Riverton', '2026-11-20', '14:00'), told('Mill Bay', '2026-12-12', '11:00')]);
    expect(read(past.book, [told('Mill Bay', '2026-12-12', '11:00')]).missing).toEqual([]);
  });
});

const version = fc.record({
  uid: fc.constantFrom('Riverton', 'Mill Bay', 'Stone Bridge'),
  day: fc.integer({ min: 10, max: 28 }),
  hour: fc.integer({ min: 10, max: 20 }),
  sequence: fc.integer({ min: 0, max: 3 }),
  stampMs: fc.integer({ min: 0, max: 3 }),
  status: fc.constantFrom('planned' as const, 'cancelled' as const),
});
const asTold = ({
  uid,
  day,
  hour,
  ...rest
}: {
  uid: string;
  day: number;
  hour: number;
  sequence: number;
  stampMs: number;
  status: 'planned' | 'cancelled';
}): ToldGame => told(uid, `2026-12-${day}`, `${hour}:00`, rest);
/** What people see, without when it was read. */
const seen = (book: readonly Game[]): unknown =>
  book.map(({ uid, date, time, status, sequence, stampMs }) => [uid, date, time, status, sequence, stampMs]);

test('any order and any repetition of the updates of one file ends in the same games', () => {
  const shuffled = fc
    .array(version, { minLength: 1, maxLength: 12 })
    .chain((versions) =>
      fc.tuple(
        fc.constant(versions),
        fc.shuffledSubarray([...versions, ...versions, ...versions], { minLength: versions.length * 3 }),
      ),
    );
  fc.assert(
    fc.property(shuffled, ([versions, again]) => {
      expect(seen(read([], again.map(asTold)).book)).toEqual(seen(read([], versions.map(asTold)).book));
    }),
    { numRuns: 500 },
  );
});

test('any order and any repetition of separate readings ends in the same games, when versions differ', () => {
  const different = fc.uniqueArray(version, {
    selector: ({ uid, sequence, stampMs }) => `${uid} ${sequence} ${stampMs}`,
    minLength: 1,
    maxLength: 12,
  });
  const orders = different.chain((versions) =>
    fc.tuple(
      fc.constant(versions),
      fc.shuffledSubarray([...versions, ...versions], { minLength: versions.length * 2 }),
    ),
  );
  fc.assert(
    fc.property(orders, ([versions, again]) => {
      const oneByOne = (list: typeof versions) =>
        list.reduce<readonly Game[]>((book, each) => read(book, [asTold(each)], false).book, []);
      expect(seen(oneByOne(again))).toEqual(seen(oneByOne(versions)));
    }),
    { numRuns: 500 },
  );
});
