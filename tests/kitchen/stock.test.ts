import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Desk } from '../../src/kitchen/stock/desk.ts';
import { recordCounted } from '../../src/kitchen/stock/record-counted.ts';
import { recordMade } from '../../src/kitchen/stock/record-made.ts';
import { recordMoved } from '../../src/kitchen/stock/record-moved.ts';
import { isDateMarked, recordOpened } from '../../src/kitchen/stock/record-opened.ts';
import { recordServed, recordTossed, recordTossedExpired } from '../../src/kitchen/stock/record-taken.ts';
import { undoLast } from '../../src/kitchen/stock/undo.ts';
import { Problem } from '../../src/nutrition/problem.ts';
import { openDatabase } from '../../src/store/database.ts';
import { ledgersIn } from '../../src/store/ledger.ts';
import { freshPlace } from '../helpers/database.ts';
import { at, book, recipe, type StockRoom, stockRoom } from '../helpers/stock-kitchen.ts';

let room: StockRoom;
beforeEach(async () => {
  room = await stockRoom();
});
afterEach(() => room.database.close());

const oats = { recipeId: 'oat-bars' };
const serve = (desk: Desk, pieces: number | 'all', which = oats, requestKey?: string) =>
  recordServed(desk, {
    who: 'IN-01',
    atMs: desk.nowMs,
    items: [{ which, pieces }],
    ...(requestKey === undefined ? {} : { requestKey }),
  });
const toss = (desk: Desk, pieces: number | 'all', which = oats) =>
  recordTossed(desk, { who: 'IN-01', atMs: desk.nowMs, items: [{ which, pieces }] });
const move = (desk: Desk, pieces: number | 'all', to: string) =>
  recordMoved(desk, { who: 'IN-01', atMs: desk.nowMs, which: oats, pieces, to });
const undo = (desk: Desk, who = 'IN-01') => undoLast(desk, { who, atMs: desk.nowMs });
const balance = async (desk: Desk): Promise<number> =>
  (await desk.ledger.holdings()).reduce((sum, holding) => sum + holding.pieces, 0);
const refused = async (doing: Promise<unknown>): Promise<Problem> => {
  const error = await doing.then(
    () => undefined,
    (thrown: unknown) => thrown,
  );
  expect(error).toBeInstanceOf(Problem);
  return error as Problem;
};

describe('what was made', () => {
  test('gets a short code, is set after its time and lasts through day 7', async () => {
    const { batch, holding } = await room.make('2026-11-02 09:30');
    expect(batch.code).toBe('B1');
    expect(batch.setUntilMs).toBe(at('2026-11-02 10:30'));
    expect(holding.useBy).toBe('2026-11-08');
  });

  test('keeps its allergens and what stood against each need as they were', async () => {
    const { batch } = await room.make('2026-11-02 09:30');
    expect(batch.facts.contains.map((mark) => mark.allergen)).toEqual(
      expect.arrayContaining(['peanut', 'milk']),
    );
    expect(batch.facts.verdicts.peanut).toBe('conflict');
    expect(batch.facts.ingredients.find((line) => line.foodId === 'honey')?.massG).toBeGreaterThan(0);
    const [read] = await room.desk('2026-11-03 08:00').ledger.batches({ codes: ['B1'] });
    expect(read?.facts).toEqual(batch.facts);
  });

  test('ends with an opened ingredient whose own mark comes first (3-501.17)', async () => {
    const milk = book.foods.get('milk-2');
    if (!milk) throw new Error('no milk');
    await recordOpened(room.desk('2026-10-30 08:00'), {
      who: 'IN-01',
      atMs: at('2026-10-30 08:00'),
      food: milk,
    });
    const { holding, shortenedBy } = await room.make('2026-11-02 09:30');
    expect(holding.useBy).toBe('2026-11-05');
    expect(shortenedBy?.foodId).toBe('milk-2');
  });

  test('is not shortened by an opening that was undone', async () => {
    const milk = book.foods.get('milk-2');
    if (!milk) throw new Error('no milk');
    const desk = room.desk('2026-10-30 08:00');
    await recordOpened(desk, { who: 'IN-01', atMs: desk.nowMs, food: milk });
    await undo(desk);
    expect((await room.make('2026-11-02 09:30')).holding.useBy).toBe('2026-11-08');
  });

  test('is not put on a shelf when it must be cold', async () => {
    const { message } = await refused(room.make('2026-11-02 09:30', 40, { location: 'dry_shelf' }));
    expect(message).toContain('kept cold');
  });

  test.each([0, -3, 1.5, 1e9, Number.NaN])('refuses %s pieces', async (pieces) => {
    expect((await refused(room.make('2026-11-02 09:30', pieces))).code).toBe('bad_quantity');
  });

  test('codes are never used twice, even after an undo', async () => {
    await room.make('2026-11-02 09:30');
    await undo(room.desk('2026-11-02 09:31'));
    expect((await room.make('2026-11-02 09:40')).batch.code).toBe('B2');
  });
});

describe('serving', () => {
  test('takes what expires first across batches', async () => {
    await room.make('2026-11-03 08:00', 10);
    await room.make('2026-11-01 08:00', 10);
    const { items } = await serve(room.desk('2026-11-04 12:00'), 15);
    expect(items[0]?.taken.map(({ holding, pieces }) => [holding.batch.madeDate, pieces])).toEqual([
      ['2026-11-01', 10],
      ['2026-11-03', 5],
    ]);
    expect(items[0]?.left).toBe(5);
  });

  test('never goes below zero, and says what is there instead', async () => {
    await room.make('2026-11-02 08:00', 10);
    const { message, hint } = await refused(serve(room.desk('2026-11-02 12:00'), 11));
    expect(message).toContain('Only 10');
    expect(hint).toContain('10 Oat bars (B1');
    expect(await balance(room.desk('2026-11-02 12:00'))).toBe(10);
  });

  test('never takes what is past its date, still setting, frozen, or was made later', async () => {
    await room.make('2026-11-02 08:00', 10);
    expect((await refused(serve(room.desk('2026-11-02 08:30'), 1))).hint).toContain('still setting');
    expect((await refused(serve(room.desk('2026-11-09 08:30'), 1))).hint).toContain('past its date');
    await move(room.desk('2026-11-03 08:00'), 'all', 'freezer');
    expect((await refused(serve(room.desk('2026-11-03 09:00'), 1))).hint).toContain('freezer');
    const early = recordServed(room.desk('2026-11-03 09:00'), {
      who: 'IN-01',
      atMs: at('2026-11-01 09:00'),
      items: [{ which: oats, pieces: 1 }],
    });
    expect((await refused(early)).code).toBe('not_possible');
  });

  test('of several kinds is recorded whole or not at all', async () => {
    await room.make('2026-11-02 08:00', 10);
    const desk = room.desk('2026-11-02 12:00');
    const both = recordServed(desk, {
      who: 'IN-01',
      atMs: desk.nowMs,
      items: [
        { which: oats, pieces: 4 },
        { which: { recipeId: 'cherry-oat-bars' }, pieces: 1 },
      ],
    });
    await refused(both);
    expect(await balance(desk)).toBe(10);
  });

  test('records the same request once', async () => {
    await room.make('2026-11-02 08:00', 10, { requestKey: 'made-1' });
    await room.make('2026-11-02 08:00', 10, { requestKey: 'made-1' });
    const desk = room.desk('2026-11-02 12:00');
    await serve(desk, 4, oats, 'key-1');
    const second = await serve(desk, 4, oats, 'key-1');
    expect(second.again).toBe(true);
    expect(await balance(desk)).toBe(6);
  });

  test('by ten people at once never goes below zero', async () => {
    await room.make('2026-11-02 08:00', 7);
    const desk = room.desk('2026-11-02 12:00');
    const results = await Promise.allSettled(Array.from({ length: 10 }, () => serve(desk, 1)));
    expect(results.filter(({ status }) => status === 'fulfilled')).toHaveLength(7);
    expect(await balance(desk)).toBe(0);
  });

  test('from two programs on one database never goes below zero', async () => {
    const place = await freshPlace();
    const databases = await Promise.all([openDatabase(place.url), openDatabase(place.url)]);
    const desks = databases.map((database) => ({
      ledger: ledgersIn(database, () => at('2026-11-02 12:00'))('W'),
      book,
      nowMs: at('2026-11-02 12:00'),
    }));
    const [one, two] = desks;
    if (!one || !two) throw new Error('no desks');
    await recordMade(one, {
      who: 'IN-01',
      atMs: at('2026-11-02 08:00'),
      batches: [{ recipe: recipe('oat-bars'), pieces: 9, lots: [] }],
    });
    const results = await Promise.allSettled(
      Array.from({ length: 20 }, (_, i) => serve(i % 2 === 0 ? one : two, 1)),
    );
    expect(results.filter(({ status }) => status === 'fulfilled')).toHaveLength(9);
    expect(await balance(two)).toBe(0);
    for (const database of databases) await database.close();
    await place.remove();
  });

  test('is seen by no other workspace', async () => {
    await room.make('2026-11-02 08:00', 7);
    const other = room.desk('2026-11-02 12:00', 'W2');
    expect(await other.ledger.holdings()).toEqual([]);
    expect((await refused(serve(other, 1))).code).toBe('not_possible');
    expect((await refused(undo(other))).code).toBe('not_found');
  });
});

describe('throwing out', () => {
  test('takes what is past its date first', async () => {
    await room.make('2026-11-01 08:00', 10);
    await room.make('2026-11-07 08:00', 10);
    const { items } = await toss(room.desk('2026-11-08 09:00'), 12);
    expect(items[0]?.taken.map(({ pieces }) => pieces)).toEqual([10, 2]);
  });

  test('everything past its date leaves the rest', async () => {
    await room.make('2026-11-01 08:00', 10);
    await room.make('2026-11-07 08:00', 10);
    const desk = room.desk('2026-11-08 09:00');
    await recordTossedExpired(desk, {
      who: 'IN-01',
      atMs: desk.nowMs,
      items: [{ which: {}, pieces: 'all' }],
    });
    expect(await balance(desk)).toBe(10);
  });
});

describe('counting', () => {
  test('fewer takes the difference, more adds it to the batch made last', async () => {
    await room.make('2026-11-01 08:00', 10);
    await room.make('2026-11-02 08:00', 10);
    const desk = room.desk('2026-11-03 09:00');
    const counting = { who: 'IN-01', atMs: desk.nowMs, which: oats };
    expect((await recordCounted(desk, { ...counting, pieces: 15 })).taken[0]?.pieces).toBe(5);
    const more = await recordCounted(desk, { ...counting, pieces: 18 });
    expect(more.added?.holding.batch.madeDate).toBe('2026-11-02');
    expect(await balance(desk)).toBe(18);
  });

  test('without a place leaves what is frozen alone', async () => {
    await room.make('2026-11-01 08:00', 20);
    const desk = room.desk('2026-11-01 12:00');
    await move(desk, 8, 'freezer');
    const counted = await recordCounted(desk, { who: 'IN-01', atMs: desk.nowMs, which: oats, pieces: 12 });
    expect(counted).toMatchObject({ before: 12, elsewhere: 8 });
    expect(await balance(desk)).toBe(20);
  });

  test('zero is a count, and a count of nothing known is refused', async () => {
    const desk = room.desk('2026-11-01 12:00');
    const counting = { who: 'IN-01', atMs: desk.nowMs, which: oats };
    expect((await refused(recordCounted(desk, { ...counting, pieces: 5 }))).code).toBe('not_possible');
    await room.make('2026-11-01 08:00', 20);
    await recordCounted(desk, { ...counting, pieces: 0 });
    expect(await balance(desk)).toBe(0);
  });
});

describe('moving', () => {
  test('frozen days are not counted, days used stay used', async () => {
    await room.make('2026-03-02 08:00', 20);
    await move(room.desk('2026-03-03 17:00'), 'all', 'freezer');
    const { to } = await move(room.desk('2026-03-09 08:00'), 'all', 'fridge_a');
    expect(to[0]).toMatchObject({ useBy: '2026-03-13', thawed: true });
  });

  test('frozen twice loses no day and gains none', async () => {
    await room.make('2026-03-02 08:00', 20);
    await move(room.desk('2026-03-02 17:00'), 'all', 'freezer');
    await move(room.desk('2026-03-05 08:00'), 'all', 'fridge_a');
    await move(room.desk('2026-03-05 17:00'), 'all', 'freezer');
    const { to } = await move(room.desk('2026-03-09 08:00'), 'all', 'fridge_b');
    // Used: March 2 and March 5. Five of seven days are left, the day of thawing among them.
    expect(to[0]?.useBy).toBe('2026-03-13');
  });

  test('out of the fridge starts a clock of four hours that no fridge stops', async () => {
    await room.make('2026-11-02 08:00', 20);
    const { to } = await move(room.desk('2026-11-02 14:00'), 12, 'out');
    expect(to[0]?.discardAtMs).toBe(at('2026-11-02 18:00'));
    const back = recordMoved(room.desk('2026-11-02 15:00'), {
      who: 'IN-01',
      atMs: at('2026-11-02 15:00'),
      which: { ...oats, places: ['out'] },
      pieces: 'all',
      to: 'fridge_a',
    });
    expect((await refused(back)).message).toContain('does not go back');
    expect(
      (await refused(serve(room.desk('2026-11-02 18:00'), 12, { ...oats, places: ['out'] } as typeof oats)))
        .hint,
    ).toContain('too long');
  });

  test('never moves more than there is', async () => {
    await room.make('2026-11-02 08:00', 5);
    expect((await refused(move(room.desk('2026-11-02 14:00'), 6, 'freezer'))).message).toContain('Only 5');
  });
});

describe('undo', () => {
  test('takes back one entry after another, the last first', async () => {
    await room.make('2026-11-02 08:00', 20);
    const desk = room.desk('2026-11-02 12:00');
    await serve(desk, 3);
    await toss(desk, 2);
    expect((await undo(desk)).event.kind).toBe('tossed');
    expect((await undo(desk)).event.kind).toBe('served');
    expect(await balance(desk)).toBe(20);
    expect((await undo(desk)).event.kind).toBe('made');
    expect(await balance(desk)).toBe(0);
    expect((await refused(undo(desk))).code).toBe('not_found');
  });

  test('never takes back what somebody else did', async () => {
    await room.make('2026-11-02 08:00', 20, { who: 'IN-02' });
    expect((await refused(undo(room.desk('2026-11-02 12:00')))).code).toBe('not_found');
  });

  test('is refused when the pieces are used', async () => {
    await room.make('2026-11-02 08:00', 20, { who: 'IN-02' });
    const desk = room.desk('2026-11-02 12:00');
    await serve(desk, 3);
    expect((await refused(undo(desk, 'IN-02'))).code).toBe('not_possible');
    expect(await balance(desk)).toBe(17);
  });

  test('the last entry is the last even when the clock stands still or goes back', async () => {
    await room.make('2026-11-02 08:00', 20);
    await serve(room.desk('2026-11-02 12:00'), 3);
    await serve(room.desk('2026-11-02 11:00'), 4);
    const undone = await undo(room.desk('2026-11-02 11:00'));
    expect(undone.changed).toMatchObject([{ pieces: 4 }]);
  });
});

describe('time', () => {
  test('that has not come, or is more than a week ago, is refused', async () => {
    await room.make('2026-11-02 08:00', 20);
    const desk = room.desk('2026-11-02 12:00');
    const served = (wall: string) =>
      recordServed(desk, { who: 'IN-01', atMs: at(wall), items: [{ which: oats, pieces: 1 }] });
    expect((await refused(served('2026-11-02 12:30'))).message).toContain('not come yet');
    expect((await refused(served('2026-10-20 12:30'))).message).toContain('seven days');
  });
});

test('yogurt follows its maker, milk is marked, oats are not (3-501.17 exemptions)', () => {
  const marked = (id: string) => {
    const food = book.foods.get(id);
    if (!food) throw new Error(id);
    return isDateMarked(food);
  };
  expect([marked('greek-yogurt'), marked('milk-2'), marked('honey')]).toEqual([false, true, false]);
});

test('after any sequence the balance is made − served − tossed ± counted, and never below zero', async () => {
  const step = fc.record({
    kind: fc.constantFrom('made', 'served', 'tossed', 'counted', 'moved', 'undo'),
    pieces: fc.integer({ min: 1, max: 30 }),
  });
  await fc.assert(
    fc.asyncProperty(fc.array(step, { maxLength: 14 }), fc.uuid(), async (steps, workspace) => {
      const desk = room.desk('2026-11-02 12:00', workspace);
      const ledger: number[] = [];
      for (const { kind, pieces } of steps) {
        try {
          if (kind === 'made') {
            await recordMade(desk, {
              who: 'IN-01',
              atMs: at('2026-11-02 08:00'),
              batches: [{ recipe: recipe('oat-bars'), pieces, lots: [] }],
            });
            ledger.push(pieces);
          } else if (kind === 'served') {
            await serve(desk, pieces);
            ledger.push(-pieces);
          } else if (kind === 'tossed') {
            await toss(desk, pieces);
            ledger.push(-pieces);
          } else if (kind === 'counted') {
            const counted = await recordCounted(desk, {
              who: 'IN-01',
              atMs: desk.nowMs,
              which: oats,
              pieces,
            });
            ledger.push(counted.after - counted.before);
          } else if (kind === 'moved') {
            await move(desk, pieces, pieces % 2 === 0 ? 'freezer' : 'fridge_b');
            ledger.push(0);
          } else {
            await undo(desk);
            ledger.pop();
          }
        } catch (error) {
          if (!(error instanceof Problem)) throw error;
        }
        const after = ledger.reduce((sum, change) => sum + change, 0);
        const holdings = await desk.ledger.holdings();
        expect(holdings.every((holding) => holding.pieces > 0)).toBe(true);
        expect(await balance(desk)).toBe(after);
      }
    }),
    { numRuns: 25, interruptAfterTimeLimit: 12_000 },
  );
});
