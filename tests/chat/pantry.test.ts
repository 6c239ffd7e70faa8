import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { takeFrom } from '../../src/kitchen/pantry/uses.ts';
import { conversing } from '../helpers/conversing.ts';

/** A Wednesday. */
const { answer, data, refused, shown } = conversing('2026-12-02 10:00');
const OZ_42_G = 1_190.7;

describe('the pantry', () => {
  test('holds what came, by lot, and what was paid counts against the budget', async () => {
    await answer('received 4 jars peanut butter at 6.99 each');
    await answer('received 50 lb oats lot A12 for $34.50');
    expect(await data('how much oats left')).toMatchObject({ food: 'rolled-oats', onHandG: 22_679.6 });
    expect(await shown('how much oats left')).toContain('Lot A12');
    // By hand: 4 x 699 + 3450 = 6246 cents.
    expect(await data('budget left')).toMatchObject({ spentCents: 6_246, leftCents: 53_754 });
    expect(await shown('what is in the pantry')).toContain('2 foods in the pantry');
  });

  test('gives a batch its ingredients and takes them back when it is undone', async () => {
    await answer('received 42 oz oats');
    // By hand: 810 g of oats go into 40 bars; 42 oz are 1190.7 g.
    const made = await data('made 40 oat bars');
    expect(made.pantry).toEqual([{ food: 'rolled-oats', usedG: 810, leftG: 380.7, shortG: 0 }]);
    expect(await shown('undo')).toContain('back in the pantry');
    expect(await data('how much oats left')).toMatchObject({ onHandG: OZ_42_G });
  });

  test('never goes below nothing: what went in beyond it is told', async () => {
    await answer('received 1 lb oats');
    const made = await data('made 40 oat bars');
    expect(made.pantry).toEqual([{ food: 'rolled-oats', usedG: 453.6, leftG: 0, shortG: 356.4 }]);
    expect(await shown('how much oats left')).toContain('No rolled oats on hand');
  });

  test('is put right by a count, and what is thrown out is waste in money', async () => {
    await answer('received 2 lb raisins');
    expect(await data('counted 1 lb raisins')).toMatchObject({ beforeG: 907.2, afterG: 453.6 });
    await answer('undo');
    expect(await data('tossed 1 lb raisins')).toMatchObject({ afterG: 453.6 });
    // By hand: the demo kitchen pays $5.99 for 907 g; 453.6 g are 299.6 cents.
    expect(await data('waste in dollars this week')).toMatchObject({ tossedCents: 300 });
  });

  test('the same delivery twice is logged once', async () => {
    await answer('received 1 lb oats', { requestKey: 'k' });
    expect(await data('received 1 lb oats', { requestKey: 'k' })).toMatchObject({
      logged: false,
      onHandG: 453.6,
    });
  });

  test('one workspace sees nothing of another, athletes nothing at all', async () => {
    await answer('received 1 lb oats');
    expect(await data('how much oats left', { workspace: 'W2' })).toMatchObject({ known: false });
    for (const text of ['how much oats left', 'received 1 lb oats', 'what is in the pantry'])
      expect(await refused(text, { role: 'athlete', who: 'WP-07' })).toMatchObject({ code: 'not_allowed' });
  });

  test('what an intern says was paid is kept, but is no price', async () => {
    const before = await data('price of oats');
    await answer('received 42 oz oats for $9.99', { role: 'intern', who: 'IN-01' });
    expect(await data('price of oats')).toEqual(before);
    expect(await data('budget left')).toMatchObject({ spentCents: 999 });
  });

  test.each([
    ['received 0 lb oats', 'bad_quantity'],
    ['received 99999999 lb oats', 'bad_quantity'],
    ['tossed 500 lb oats', 'not_possible'],
  ])('"%s" is refused and changes nothing', async (text, code) => {
    await answer('received 1 lb oats');
    expect(await refused(text)).toMatchObject({ code });
    expect(await data('how much oats left')).toMatchObject({ onHandG: 453.6 });
  });
});

test('what is taken is never more than is there nor more than is asked', () => {
  const lots = fc.array(fc.record({ massG: fc.double({ min: 0.001, max: 1e5, noNaN: true }) }), {
    maxLength: 8,
  });
  fc.assert(
    fc.property(lots, fc.double({ min: 0, max: 1e6, noNaN: true }), (rows, askedG) => {
      const held = rows.map((row, i) => ({ ...row, foodId: 'rolled-oats', lot: `L${i}` }));
      const { movements, takenG } = takeFrom(held, 'rolled-oats', askedG);
      const thereG = held.reduce((sum, { massG }) => sum + massG, 0);
      expect(takenG).toBeCloseTo(Math.min(askedG, thereG), 3);
      for (const { lot, massG } of movements) {
        const own = held.find((each) => each.lot === lot)?.massG ?? 0;
        expect(massG <= 0 && -massG <= own).toBe(true);
      }
    }),
  );
});
