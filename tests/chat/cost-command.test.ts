import { describe, expect, test } from 'vitest';
import { conversing } from '../helpers/conversing.ts';
import { book } from '../helpers/stock-kitchen.ts';

/** A Wednesday. */
const { answer, data, refused, say, shown } = conversing('2026-12-02 10:00');

describe('what things cost', () => {
  test('a batch, with every ingredient by its package price', async () => {
    const cost = await data('cost of 40 oat bars');
    expect(cost).toMatchObject({ recipe: 'oat-bars', pieces: 40, isLowerBound: false });
    // By hand: 3 cups are 243 g for 12 bars, 810 g for 40; 3450 x 810 / 22680 = 123.2.
    expect(cost.lines).toContainEqual({ food: 'rolled-oats', massG: 810, cents: 123 });
    expect(Number.isInteger(cost.batchCents) && Number.isInteger(cost.pieceCents)).toBe(true);
  });

  test('a piece, and an amount of a food', async () => {
    const [piece, batch] = [await data('cost per bar of oat bars'), await data('cost of 12 oat bars')];
    expect(piece.pieceCents).toBe(Math.round(Number(batch.batchCents) / 12));
    // By hand: the demo kitchen buys almonds at $13.99 for 1,361 g; 3 lb are 1360.8 g.
    expect(await data('how much do 3 lb of almonds cost')).toMatchObject({ cents: 1399 });
  });

  test('two recipes, the cheaper first', async () => {
    const { compared } = await data('which is cheaper, oat bars or cherry oat bars');
    expect(compared).toMatchObject([{ id: 'oat-bars' }, { id: 'cherry-oat-bars' }]);
  });

  test('a game, spares included', async () => {
    await answer('game Sat 2pm vs Riverton 44 people');
    const game = await data('what does saturday cost');
    const [{ pieces }] = game.games as [{ pieces: number }];
    expect(pieces).toBeGreaterThanOrEqual(44);
    expect(game.cents).toBe((await data(`cost of ${pieces} oat bars`)).batchCents);
  });

  test('the budget, before anything came', async () => {
    expect(await data('budget left')).toMatchObject({
      budgetCents: 60_000,
      spentCents: 0,
      leftCents: 60_000,
    });
    expect((await say('what did we spend this week')).answer?.title).toContain('$600.00 left this week');
  });
});

describe('prices told in chat', () => {
  test('stand from then on, in their own workspace, until undone', async () => {
    const before = await data('cost of 40 oat bars');
    expect(await shown('oats 3.49 for 42 oz')).toContain('$3.49 for 42 oz');
    // By hand: 42 oz are 1190.68 g; 349 x 810 / 1190.68 = 237.4 cents.
    const after = await data('cost of 40 oat bars');
    expect(after.lines).toContainEqual({ food: 'rolled-oats', massG: 810, cents: 237 });
    expect((await data('cost of 40 oat bars', { workspace: 'W2' })).batchCents).toBe(before.batchCents);
    await answer('undo');
    expect((await data('cost of 40 oat bars')).batchCents).toBe(before.batchCents);
  });

  test('the same message twice is noted once', async () => {
    await answer('honey 17 for 5 lb', { requestKey: 'k1' });
    expect(await data('honey 17 for 5 lb', { requestKey: 'k1' })).toMatchObject({ noted: false });
  });

  test('are told by staff alone', async () => {
    expect(await refused('oats 3.49 for 42 oz', { role: 'intern', who: 'IN-01' })).toMatchObject({
      code: 'not_allowed',
    });
    expect(await refused('cost of 40 oat bars', { role: 'athlete', who: 'WP-07' })).toMatchObject({
      code: 'not_allowed',
    });
  });

  test.each([
    'oats -3.49 for 42 oz',
    'oats $-3.49 for 42 oz',
    'oats 99999999999 dollars for 42 oz',
    'oats 3.49 for 0 oz',
    'cost of 1e12 oat bars',
    'cost of 0 oat bars',
  ])('"%s" is refused and changes nothing', async (text) => {
    const before = await data('price of oats');
    expect(await refused(text)).toMatchObject({ code: 'bad_quantity' });
    expect(await data('price of oats')).toEqual(before);
  });

  test('an unknown dish or food is said to be unknown', async () => {
    expect((await refused('price of saffron'))?.code).toMatch(/unknown/);
  });

  test('a food nobody told a price of', async () => {
    expect(await shown('price of butter')).toContain('No price of Butter, salted is on file');
  });
});

describe('a kitchen that does not know what raisins cost', () => {
  const [raisins] = [...book.foods.values()].filter(({ id }) => id === 'raisins');
  if (!raisins) throw new Error('no raisins');
  const { price: _price, ...unpriced } = raisins;
  const poorer = conversing('2026-12-02 10:00', {
    ...book,
    foods: new Map([...book.foods, ['raisins', unpriced]]),
  });

  test('says a lower bound and whose price is missing, until it is told', async () => {
    const before = await poorer.answer('cost of 40 oat bars');
    expect(before.title).toContain('40 oat bars cost at least $');
    expect(before.data).toMatchObject({ isLowerBound: true, unpriced: ['raisins'] });
    expect(await poorer.shown('cost of 40 oat bars')).toContain('No price on file for Raisins');
    await poorer.answer('raisins 5.99 for 2 lb');
    expect(await poorer.data('cost of 40 oat bars')).toMatchObject({ isLowerBound: false, unpriced: [] });
  });
});
