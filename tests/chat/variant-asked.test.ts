import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Database } from '../../src/store/database.ts';
import { freshDatabase } from '../helpers/database.ts';
import { type Asks, rosterKitchen } from '../helpers/roster-kitchen.ts';
import { at } from '../helpers/stock-kitchen.ts';

let database: Database;
let room: Asks;
beforeAll(async () => {
  database = await freshDatabase();
});
beforeEach(async () => {
  room = await rosterKitchen(database, at('2026-11-25 10:00'));
});
afterAll(() => database.close());

const foodsOf = (lines: unknown): string[] => (lines as { food: string }[]).map(({ food }) => food);

describe('a batch asked for without something', () => {
  test('is the swapped mix, and says the swap before any figure', async () => {
    const { answer } = await room.ask('40 nut free oat bars');
    expect(answer?.title).toMatch(/^Nut-free by swap: 40 Oat bars/);
    expect(answer?.sections[0]).toMatchObject({
      text: expect.stringMatching(/^Swapped, .*Sunflower butter.* for Peanut butter, smooth/),
    });
    expect(foodsOf(answer?.data.lines).join()).not.toContain('peanut');
    expect(foodsOf(answer?.data.lines).join()).toContain('sunflower');
    expect(answer?.data.pieces).toBe(40);
  });

  test('stays that in "for 40", and a recipe named anew is its card', async () => {
    await room.ask('nut-free version of oat bars');
    const { answer } = await room.ask('for 40');
    expect(answer?.data.swap).toBe('sunflower butter for peanut butter');
    expect((await room.ask('for 60')).answer?.data.swap).toBe('sunflower butter for peanut butter');
    const plain = (await room.ask('60 oat bars')).answer;
    expect(plain?.data.swap).toBeUndefined();
    expect(foodsOf(plain?.data.lines).join()).toContain('peanut');
  });

  test('that no swap gives is said to be the card as it is', async () => {
    const said = await room.read('40 gluten free turkey rolls');
    if (!said.includes('by swap')) expect(said).toContain('NOT gluten-free');
  });

  test.each(['40 nut free oat bars', '24 vegan oat bars', '24 gluten free oat bars'])(
    'is logged with its swap by what it offers next: %s',
    async (text) => {
      const { answer } = await room.ask(text);
      const says = answer?.next.find(({ says }) => says.startsWith('made '))?.says ?? '';
      const logged = await room.ask(says);
      expect(logged.error).toBeUndefined();
      expect(logged.answer?.title).toContain(`(${answer?.data.swap})`);
      expect(logged.answer?.title).toContain('batch B1');
    },
  );

  test('has its own figures, label and price', async () => {
    const plain = (await room.ask('cost of 40 oat bars')).answer;
    const cost = (await room.ask('cost of 40 nut free oat bars')).answer;
    expect(cost?.data.pieces).toBe(40);
    expect(cost?.data.batchCents).not.toBe(plain?.data.batchCents);
    expect(foodsOf(cost?.data.lines).join()).not.toContain('peanut');
    for (const text of [
      'protein in vegan oat bars',
      'label for nut free oat bars',
      'macros of the nut free oat bars',
    ])
      expect((await room.ask(text)).answer?.title).toMatch(/^(?:Vegan|Nut-free) by swap: /);
    expect(await room.read('macros oat bars')).not.toContain('by swap');
  });

  test('a food that is not on the card is not priced in silence', async () => {
    expect(await room.read('cost of 40 oat bars with almond butter')).toContain('is NOT in this price');
    expect(await room.read('cost of 40 oat bars with peanut butter')).not.toContain('is NOT in this price');
  });
});

describe('the answer to what was swapped', () => {
  test.each([
    ['made 20 nut free oat bars', 0],
    ['made 20 vegan oat bars', 0],
    ['made 24 oat bars with almond butter', 2],
  ])('typed as it is offered, logs: %s', async (text, place) => {
    const { answer } = await room.ask(text);
    const says = answer?.next[place]?.says ?? '';
    const logged = await room.ask(says);
    expect(logged.intent).toBe('made');
    expect(logged.answer?.title).toContain('batch B1');
    expect(logged.answer?.title).toMatch(/\(.+ for .+\)/);
  });

  test('is not taken from a whole new entry', async () => {
    await room.ask('made 24 oat bars with almond butter');
    const said = await room.read('made 24 oat bars with sunflower butter instead of peanut butter');
    expect(said).toContain('24 oat bars (sunflower');
  });
});
