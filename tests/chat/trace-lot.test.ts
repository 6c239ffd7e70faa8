import { describe, expect, test } from 'vitest';
import { conversing } from '../helpers/conversing.ts';

/** A Wednesday. 12 oat bars take 243 g of oats, 40 take 810 g. */
const { answer, data, refused, shown } = conversing('2026-12-02 10:00');

type Traced = { readonly batch: string; readonly knownBy?: string };
const batches = async (lot: string, which: 'batches' | 'possible' = 'batches') =>
  ((await data(`trace lot ${lot}`))[which] as Traced[]).map(({ batch, knownBy }) => [batch, knownBy]);

describe('a lot the pantry took by itself', () => {
  test('is followed to the batches it was counted into, and said to be no more than that', async () => {
    await answer('received 2 lb oats lot A12');
    await answer('received 5 lb oats lot C77', { when: '2026-12-02 10:05' });
    await answer('made 40 oat bars', { when: '2026-12-02 11:00' });
    // By hand: 2 lb are 907.18 g, so 97.18 g are left of A12; the next 243 g take them and 145.82 g of C77's 2267.96 g.
    await answer('made 12 oat bars', { when: '2026-12-02 12:00' });
    expect(await batches('A12')).toEqual([
      ['B1', 'pantry_count'],
      ['B2', 'pantry_count'],
    ]);
    expect(await batches('c77')).toEqual([['B2', 'pantry_count']]);
    expect(await batches('C77', 'possible')).toEqual([['B1', undefined]]);
    expect((await data('trace lot C77')).onShelf).toEqual([{ food: 'rolled-oats', massG: 2_122.1 }]);
    const title = (await answer('trace lot A12')).title;
    expect(title).toBe(
      'Lot A12 of Rolled oats, not said but counted by the pantry, went into 2 batches, B1, B2: 52 made, 0 served, 0 tossed, 52 left.',
    );
    expect(await shown('trace lot A12')).toMatch(
      /B1, B2: taken from the open or oldest package on hand, not\s+said/,
    );
    expect(await shown('trace B1')).toMatch(/Rolled oats lot A12 \(taken from the open or oldest\s+package/);
  });

  test('is told apart from one that was said', async () => {
    await answer('received 2 lb oats lot A12');
    await answer('made 12 oat bars', { when: '2026-12-02 11:00' });
    await answer('made 12 oat bars with lot A12 of rolled oats', { when: '2026-12-02 12:00' });
    await answer('made 12 oat bars with lot B99 of rolled oats', { when: '2026-12-02 13:00' });
    expect(await batches('A12')).toEqual([
      ['B2', 'said'],
      ['B1', 'pantry_count'],
      ['B3', 'pantry_count'],
    ]);
    expect(await shown('trace lot A12')).toMatch(/Said when it was made: B2\.\s+Taken from .*: B1, B3\./s);
    expect(await batches('B99')).toEqual([['B3', 'said']]);
  });

  test('of the package that was opened goes first', async () => {
    await answer('received 2 lb oats lot A12');
    await answer('received 2 lb oats lot C77', { when: '2026-12-02 10:05' });
    await answer('opened oats lot C77', { when: '2026-12-02 10:10' });
    await answer('made 12 oat bars', { when: '2026-12-02 11:00' });
    expect(await batches('C77')).toEqual([['B1', 'pantry_count']]);
    expect(await batches('A12')).toEqual([]);
  });

  test('that no batch took says what is on the shelf and what cannot be ruled out', async () => {
    await answer('received 2 lb oats');
    await answer('received 2 lb oats lot A12', { when: '2026-12-02 10:05' });
    await answer('made 12 oat bars', { when: '2026-12-02 11:00' });
    const traced = await answer('trace lot A12');
    expect(traced.title).toBe('Lot A12 of Rolled oats went into no batch that is known.');
    expect(traced.data).toMatchObject({
      batches: [],
      possible: [{ batch: 'B1' }],
      onShelf: [{ massG: 907.2 }],
    });
    expect(await shown('trace lot A12')).toContain('Not ruled out');
  });

  test('forgets a batch that was undone, and knows no lot of another workspace', async () => {
    await answer('received 2 lb oats lot A12');
    await answer('made 12 oat bars', { when: '2026-12-02 11:00' });
    await answer('undo');
    expect(await batches('A12')).toEqual([]);
    expect(await refused('trace lot A12', { workspace: 'W2' })).toMatchObject({ code: 'not_found' });
    expect(await refused('trace lot ZZ9')).toMatchObject({ code: 'not_found' });
  });

  test('in batches made by one entry counts for each that has the food in it', async () => {
    await answer('received 2 lb oats lot A12');
    await answer('made 12 oat bars and 20 seed trail mix', { when: '2026-12-02 11:00' });
    expect(await batches('A12')).toEqual([['B1', 'pantry_count']]);
  });
});
