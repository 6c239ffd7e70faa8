import { describe, expect, test } from 'vitest';
import { shop } from '../../src/chat/commands/shop/index.ts';
import { plainText } from '../../src/chat/plain-text.ts';
import { answerMessage } from '../../src/slack/blocks/message.ts';
import { conversing } from '../helpers/conversing.ts';
import { askCommand } from '../helpers/pantry-kitchen.ts';
import { book } from '../helpers/stock-kitchen.ts';

/** A Wednesday. */
const { answer, data, refused, say, shown } = conversing('2026-12-02 10:00');

type Lines = readonly { readonly food: string; readonly [figure: string]: unknown }[];
const line = (figures: Readonly<Record<string, unknown>>, food: string) =>
  (figures.lines as Lines).find((each) => each.food === food);

describe('shopping for batches', () => {
  test('is what they need in whole packages, with the price of each', async () => {
    const list = await data('shop for 40 oat bars');
    // By hand: 3 cups of 81 g and 6 scoops of 31 g for 12 bars; 810 g and 620 g for 40.
    expect(line(list, 'rolled-oats')).toMatchObject({
      neededG: 810,
      onHandG: null,
      packages: 1,
      packageName: '50 lb bag',
      cents: 3_450,
      section: 'dry goods',
    });
    expect(line(list, 'whey-vanilla')).toMatchObject({ neededG: 620, packages: 1, cents: 3_899 });
    // By hand: 119 + 389 + 599 + 3450 + 3899 + 499 + 1390 + 1799 cents; 60000 - 12144 are left.
    expect(list).toMatchObject({
      totalCents: 12_144,
      isLowerBound: false,
      budget: { leftCents: 60_000, leftAfterCents: 47_856 },
    });
    const text = await shown('shop for 40 oat bars');
    expect(text).toContain('8 things to buy for 40 oat bars: $121.44.');
    expect(text).toContain('Budget: $478.56 of $600.00 left this week after it.');
    expect(text).toContain('none of it on record');
  });

  test('of several recipes is one sum for each food', async () => {
    const list = await data('shop for 40 oat bars and 24 peanut cocoa bites');
    // By hand: 810 g, and 2 cups of 81 g for 24 bites.
    expect(line(list, 'rolled-oats')).toMatchObject({ neededG: 972 });
    expect(list.batches).toEqual([
      { recipe: 'oat-bars', pieces: 40 },
      { recipe: 'peanut-cocoa-bites', pieces: 24 },
    ]);
    // By hand: 60 bars take 6 x 31 x 5 = 930 g of whey; a tub holds 907 g.
    expect(line(await data('shop for 5 batches of oat bars'), 'whey-vanilla')).toMatchObject({
      neededG: 930,
      packages: 2,
      cents: 7_798,
    });
  });

  test('takes off what is on hand, and says what it does not know of', async () => {
    await answer('received 1 lb oats');
    await answer('counted 6 lb honey');
    const list = await data('shop for 40 oat bars');
    // By hand: 810 - 453.6 g.
    expect(line(list, 'rolled-oats')).toMatchObject({ onHandG: 453.6, toBuyG: 356.4, packages: 1 });
    expect(line(list, 'honey')).toMatchObject({ toBuyG: 0, packages: null, isWanted: false });
    expect(list.totalCents).toBe(12_144 - 1_799);
    expect(await shown('shop for 40 oat bars')).toMatch(/On hand, nothing to buy\n- Honey: need/);
    expect(line(await data('shop for 40 oat bars', { workspace: 'W2' }), 'honey')).toMatchObject({
      onHandG: null,
    });
  });

  test('leaves out an opened package that is past its date by then', async () => {
    await answer('received 1 gallon 2% milk', { when: '2026-12-02 10:00' });
    await answer('opened 2% milk', { when: '2026-12-02 10:01' });
    expect(line(await data('shop for 40 oat bars'), 'milk-2')).toMatchObject({ toBuyG: 0 });
    const later = await data('shop for 40 oat bars', { when: '2026-12-10 10:00' });
    expect(line(later, 'milk-2')).toMatchObject({ onHandG: 0, packages: 1 });
    expect(Number(line(later, 'milk-2')?.pastDateG)).toBeGreaterThan(3_000);
    expect(await shown('shop for 40 oat bars')).toContain('past its date when it is used, not counted');
  });

  test('nobody buys peanut butter for nut-free bars', async () => {
    const list = await answer('shop for 40 nut-free oat bars');
    expect(line(list.data, 'peanut-butter')).toBeUndefined();
    expect(list.audience).toBe('asker');
    for (const text of [
      'shop for 40 oat bars without peanuts',
      'shop for 40 oat bars and 24 cherry oat bars, no peanut',
    ])
      expect(line(await data(text), 'peanut-butter')).toBeUndefined();
    expect(plainText(list)).toMatch(/No peanut or tree nuts: in a batch of 12, .* for .* Peanut butter/s);
  });

  test('a short reply changes the last list', async () => {
    await answer('shop for 40 oat bars');
    expect(await data('and for 60?')).toMatchObject({ batches: [{ recipe: 'oat-bars', pieces: 60 }] });
  });

  test('one batch of the card when no number is said, and says so', async () => {
    expect(await shown('shop for oat bars')).toContain(
      'No number was said, so one batch of the card: 12 oat bars',
    );
  });

  test.each([
    ['shop for 0 bars', 'bad_quantity'],
    ['shop for -5 oat bars', 'bad_quantity'],
    ['shop for 1000000000 bars', 'bad_quantity'],
    ['shop for 40 zorbl bars', 'unknown_recipe'],
    ['shop for 40 and 60 oat bars', 'needs_more'],
    ['shopping list for saturday', 'not_found'],
    ['add -2 lb honey to the list', 'bad_quantity'],
    ['add 0 lb honey to the list', 'bad_quantity'],
    ['add 99999999 lb honey to the list', 'bad_quantity'],
    ['take honey off the list', 'not_found'],
    ['add 2 lb honey 3 lb to the list', 'needs_more'],
  ])('"%s" is refused and changes nothing', async (text, code) => {
    expect(await refused(text)).toMatchObject({ code });
    expect(await data('list')).toMatchObject({ items: [], totalCents: 0 });
  });

  test('athletes see no list and no price', async () => {
    for (const text of ['shop for 40 oat bars', 'list', 'add 2 lb honey to the list'])
      expect(await refused(text, { role: 'athlete', who: 'WP-07' })).toMatchObject({ code: 'not_allowed' });
  });

  test('reads at 40 columns and goes to Slack as blocks', async () => {
    const list = await answer('shop for 40 oat bars and 24 peanut cocoa bites');
    for (const text of plainText(list, 40).split('\n')) expect(text.length).toBeLessThanOrEqual(40);
    expect(JSON.stringify(answerMessage(list, 'b').blocks)).toContain('Rolled oats: 1 x 50 lb bag');
  });
});

describe('shopping for games', () => {
  test('buys for the plan of the game: spares, whole slabs, less made pieces', async () => {
    await answer('game Sat 2pm vs Riverton 44 people');
    const list = await data('shopping list for saturday');
    // By hand: 44 + 10 % are 49, five slabs of 12 are 60; 243 g of oats a slab.
    expect(list.batches).toEqual([{ recipe: 'oat-bars', pieces: 60 }]);
    expect(line(list, 'rolled-oats')).toMatchObject({ neededG: 1_215 });
    expect(await data('what do we need to buy for the riverton game')).toMatchObject({
      batches: list.batches,
    });
    expect(await refused('what do I need to buy for friday')).toMatchObject({ code: 'not_found' });
    await answer('made 49 oat bars');
    expect(await shown('shopping list for saturday')).toContain('Nothing to buy');
  });

  test('of a plan with needs buys for its variants', async () => {
    await answer('game Sat 2pm vs Riverton 44 people');
    const plan = await data('plan saturday 44 travelling 5 nut free');
    const list = await data('shopping list for saturday 44 travelling 5 nut free');
    const made = (plan.variants as { recipe: string; made: number }[]).map(({ recipe, made: pieces }) => ({
      recipe,
      pieces,
    }));
    expect(list.batches).toEqual(made);
    expect(line(list, 'peanut-butter')).toBeUndefined();
    const told = await answer('plan saturday 44 travelling 5 nut free');
    expect(told.next.map(({ says }) => says)).toContain(
      'shopping list for saturday 44 travelling 5 nut free',
    );
    expect(await data('shopping list')).toMatchObject({ batches: made });
    await answer('plan saturday 44 travelling 5 nut free');
    expect(await data('list')).toMatchObject({ items: [], games: true });
  });
});

describe('what the shop does not have', () => {
  test('is left off, with what may stand in for it and what that brings in', async () => {
    const list = await data('shop for 40 oat bars, out of honey');
    expect(line(list, 'honey')).toBeUndefined();
    const [{ offers }] = list.substitutes as [{ offers: { allergensGained: string[] }[] }];
    expect(offers.length).toBeGreaterThan(0);
    const gained = offers.map(({ allergensGained }) => allergensGained.length);
    expect(gained).toEqual([...gained].sort((a, b) => a - b));
    const text = await shown('shop for 40 oat bars, out of peanut butter');
    expect(text).toMatch(/Out of peanut butter, smooth, in oat bars: safest first/);
    expect(text).toMatch(/Takes out peanut|Brings in|Allergens contained: no change/);
    expect(await shown('shop for 40 oat bars, out of spinach')).toContain('none of this takes any');
  });
});

test('what is out after a list is asked of the swap engine, for that recipe', async () => {
  await answer('shop for 40 oat bars');
  expect(await data('out of honey')).toMatchObject({ recipe: 'oat-bars', without: ['honey'] });
});

describe('the list', () => {
  test('keeps what people put on, with who and when, and adds up', async () => {
    await answer('add 2 lb honey to the list', { when: '2026-12-02 10:05' });
    await answer('add 1 lb honey and paper towels to the list', {
      who: 'IN-01',
      role: 'intern',
      when: '2026-12-02 11:00',
    });
    const list = await data('list');
    expect(list.items).toMatchObject([
      { name: 'Honey', food: 'honey', massG: 1_360.8, added: [{ who: 'ST-01' }, { who: 'IN-01' }] },
      { name: 'paper towels', food: null, massG: null, added: [{ who: 'IN-01' }] },
    ]);
    // By hand: 3 lb come out of one 5 lb jug.
    expect(line(list, 'honey')).toMatchObject({ packages: 1, cents: 1_799 });
    expect(await shown('list')).toMatch(/added by ST-01, 10:05 am and\s+IN-01, 11:00 am/);
    expect(await shown('list', { workspace: 'W2' })).toContain('Nothing is on the list');
  });

  test('is taken off, by part or whole, cleared, and brought back by undo', async () => {
    await answer('add 2 lb honey to the list');
    await answer('add parchment paper to the list');
    expect((await answer('take 1 lb honey off the list')).title).toContain('Still on the list: Honey, 1 lb');
    expect((await answer('take honey off the list')).title).toContain('Off the list: Honey');
    expect((await answer('clear the list')).title).toBe('Cleared: 1 off the list.');
    expect(await data('list')).toMatchObject({ items: [] });
    await answer('undo');
    expect(await data('list')).toMatchObject({ items: [{ name: 'parchment paper' }] });
  });

  test('loses what was delivered, and no more', async () => {
    await answer('add 12 lb honey to the list');
    await answer('add flaxseed to the list');
    // By hand: 12 lb are 5443.1 g; 5 lb come, 7 lb are 3175.1 g.
    await answer('received 5 lb honey');
    expect(await data('list')).toMatchObject({
      items: [{ name: 'Honey', massG: 3_175.1 }, { food: 'flaxseed' }],
    });
    const last = await answer('received 7 lb honey');
    expect(plainText(last)).toContain('off the shopping list');
    await answer('got 2 lb flaxseed');
    expect(await data('list')).toMatchObject({ items: [] });
    await answer('undo');
    expect(await data('list')).toMatchObject({ items: [{ food: 'flaxseed' }] });
  });

  test('a batch put on it is what the shelf and the games of the week leave short', async () => {
    await answer('received 1 lb oats');
    await answer('add 40 oat bars to the list');
    // By hand: 810 - 453.6 g.
    expect(line(await data('list'), 'rolled-oats')).toMatchObject({ toBuyG: 356.4 });
    await answer('clear the list');
    await answer('game Sat 2pm vs Riverton 44 people');
    await answer('add 40 oat bars to the list');
    // By hand: the game takes 1215 g, so all 810 g of the bars are to be bought beside 1215 - 453.6 g.
    expect(line(await data('list'), 'rolled-oats')).toMatchObject({ toBuyG: 1_571.4 });
  });

  test('the same message twice is noted once', async () => {
    await answer('add 2 lb honey to the list', { requestKey: 'k1' });
    expect(await data('add 2 lb honey to the list', { requestKey: 'k1' })).toMatchObject({ noted: false });
    expect(await data('list')).toMatchObject({ items: [{ massG: 907.2 }] });
  });

  test('takes what people need to buy, and what they took off', async () => {
    await answer('we need to buy honey and 2 lb oats');
    expect(await data('list')).toMatchObject({
      items: [{ food: 'honey' }, { food: 'rolled-oats', massG: 907.2 }],
    });
    await answer('took honey off the list');
    expect(await data('list')).toMatchObject({ items: [{ food: 'rolled-oats' }] });
    await answer('should we buy honey');
    expect(await data('list')).toMatchObject({ items: [{ food: 'rolled-oats' }] });
  });

  test('a question about it changes nothing', async () => {
    expect((await answer('is honey on the list')).title).toBe('Honey is not on the list.');
    await answer('add honey to the list');
    expect((await answer('is honey on the list')).title).toMatch(
      /^Honey is on the list: 1 x 5 lb jug; added by ST-01/,
    );
    expect((await say('who put honey on the list')).answer?.data.items).toHaveLength(1);
  });
});

describe('a kitchen that does not know what raisins cost', () => {
  const raisins = book.foods.get('raisins');
  if (!raisins) throw new Error('no raisins');
  const { price: _price, ...unpriced } = raisins;
  const poorer = conversing('2026-12-02 10:00', {
    ...book,
    foods: new Map([...book.foods, ['raisins', unpriced]]),
  });

  test('says so, never nothing', async () => {
    const list = await poorer.answer('shop for 40 oat bars');
    expect(list.title).toBe('8 things to buy for 40 oat bars: at least $115.45.');
    expect(list.data).toMatchObject({ isLowerBound: true, unpriced: ['raisins'] });
    expect(line(list.data, 'raisins')).toMatchObject({ packages: null, cents: null });
    expect(plainText(list)).toMatch(/Raisins: .* package and price not known/);
    expect(plainText(list)).toContain('Budget: at most $484.55');
  });
});

describe('a kitchen with a recipe of 60 ingredients', () => {
  const foods = [...book.foods.values()].slice(0, 60);
  const card = book.recipes.get('oat-bars');
  const [first] = card?.lines ?? [];
  if (!card || !first) throw new Error('no card');
  const long = {
    ...card,
    id: 'everything-bars',
    title: 'Everything bars',
    aliases: [],
    lines: foods.map(({ id }) => ({ ...first, foodId: id, massG: 100 })),
  };
  const big = conversing('2026-12-02 10:00', {
    ...book,
    recipes: new Map([...book.recipes, [long.id, long]]),
  });

  test('lists them all', async () => {
    const list = await big.answer('shop for 24 everything bars');
    expect(list.data.lines).toHaveLength(60);
    for (const figures of list.data.lines as Lines) expect(figures.neededG).toBeGreaterThanOrEqual(200);
    expect(JSON.stringify(answerMessage(list, 'b').blocks).length).toBeGreaterThan(0);
  });
});

test('a kitchen without a memory says what to buy, and that its shelf is not known', async () => {
  const { answer: list } = await askCommand(
    shop,
    { recipe: 'test-oat-bar', quantity: 40, unit: 'bar' },
    { text: 'shop for 40 oat bars' },
  );
  expect(list.title).toMatch(/to buy for 40 /);
  expect(plainText(list)).toContain('none of it on record');
});
