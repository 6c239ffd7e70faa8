import { describe, expect, test } from 'vitest';
import { conversing } from '../helpers/conversing.ts';

/** A Wednesday. */
const { answer, data, refused, shown } = conversing('2026-12-02 10:00');

describe('a delivery as people tell it', () => {
  test.each([
    ['50 lb oats delivered', 22_679.6],
    ['50 lb of oats came in today', 22_679.6],
    ['oats came, 50 lb', 22_679.6],
    ['the oats arrived, 50 lb', 22_679.6],
    ['got 50 lb oats', 22_679.6],
    ['delivered: 2 lb oats', 907.2],
  ])('"%s" is on the shelf', async (text, onHandG) => {
    expect(await data(text)).toMatchObject({ logged: true, food: 'rolled-oats', onHandG });
  });

  test.each(['received oats', 'oats came in', 'got oats', 'the oats arrived'])(
    '"%s" is asked how much, and the amount answers it',
    async (text) => {
      expect(await data(text)).toMatchObject({ asks: 'amount', logged: false, food: 'rolled-oats' });
      expect(await data('how much oats left')).toMatchObject({ known: false });
      await answer(text);
      expect(await data('50 lb')).toMatchObject({ logged: true, food: 'rolled-oats', onHandG: 22_679.6 });
      expect(await data('how much oats left')).toMatchObject({ onHandG: 22_679.6 });
    },
  );

  test('of several foods is one entry, and undone as one', async () => {
    expect(await data('received 4 jars peanut butter and 2 lb oats')).toMatchObject({
      foods: [{ food: 'peanut-butter' }, { food: 'rolled-oats', onHandG: 907.2 }],
    });
    await answer('undo');
    expect(await shown('what is in the pantry')).toContain('nothing on record');
  });

  test.each([
    ['received 4 jars peanut butter and 2 lb oats for $20', 'needs_more'],
    ['received 2 lb oats and some peanut butter', 'needs_more'],
    ['received -2 lb oats', 'bad_quantity'],
    ['received 0 lb oats', 'bad_quantity'],
  ])('"%s" is refused and changes nothing', async (text, code) => {
    expect(await refused(text)).toMatchObject({ code });
    expect(await shown('what is in the pantry')).toContain('nothing on record');
  });

  test.each([
    'did the oats come',
    'when were 50 lb oats delivered?',
    'did we get 50 lb oats?',
    'got milk?',
    'milk in 40 oat bars',
  ])('the question "%s" writes nothing', async (text) => {
    await refused(text);
    expect(await shown('what is in the pantry')).toContain('nothing on record');
  });
});

test('a food no card uses is told from the package that cards use', async () => {
  const told = (await answer('received 2 lb hummus')).sections.map((part) => JSON.stringify(part)).join(' ');
  expect(told).toContain('No recipe card uses Hummus; cards use Kitchen hummus, classic');
  expect(await shown('received 2 lb oats')).not.toContain('No recipe card uses');
});

describe('a delivery whose label is told', () => {
  test('is on the shelf, and what uses it waits until staff have read the label', async () => {
    const told = await data('received 2 lb pretzels, label now says may contain peanut', {
      role: 'intern',
      who: 'IN-01',
    });
    expect(told).toMatchObject({
      logged: true,
      onHandG: 907.2,
      label: { state: 'changed', advisory: [{ allergen: 'peanut' }] },
    });
    expect(await refused('made 20 seed trail mix')).toMatchObject({ code: 'not_possible' });
    expect((await answer('allergens in pretzels')).title).toMatch(/may contain.*peanut/);
    expect((await answer('shop for 20 seed trail mix')).cautions.join(' ')).toMatch(
      /label of .*retzel.* changed and nobody has checked/,
    );
    await answer('checked the label of pretzels, may contain peanut', { when: '2026-12-02 10:05' });
    expect(await refused('made 20 seed trail mix')).toBeUndefined();
  });

  test('keeps apart what it contains and what it may contain', async () => {
    expect(
      await data('received 2 lb pretzels, label says contains wheat, may contain peanut and milk'),
    ).toMatchObject({
      label: { contains: [{ allergen: 'wheat' }], advisory: [{ allergen: 'milk' }, { allergen: 'peanut' }] },
    });
  });

  test('of several foods is that of the one named with it, else of all', async () => {
    const one = await data('got 50 lb oats and 2 lb raisins, raisins have a new label');
    expect(one).toMatchObject({
      foods: [{ food: 'rolled-oats' }, { food: 'raisins' }],
      label: { foods: ['raisins'] },
    });
    const all = await data('got 2 lb flaxseed and 2 lb honey, new label');
    expect(all).toMatchObject({ label: { foods: ['flaxseed', 'honey'] } });
  });

  test('opens the notice before the amount is known, once', async () => {
    const told = await answer('received oats, new label');
    expect(told.data).toMatchObject({ asks: 'amount', label: { state: 'changed' } });
    expect(told.title).toBe('How much rolled oats came? Not logged as received yet.');
    expect(await refused('made 40 oat bars')).toMatchObject({ code: 'not_possible' });
    await answer('received oats, new label', { when: '2026-12-02 10:01' });
    expect(await data('50 lb')).toMatchObject({ logged: true, onHandG: 22_679.6 });
    expect(await refused('made 40 oat bars')).toMatchObject({ code: 'not_possible' });
    await answer('checked the label of rolled oats, same as before', { when: '2026-12-02 10:05' });
    expect(await refused('made 40 oat bars')).toBeUndefined();
  });

  test.each([
    'received 2 lb oats, different brand',
    'got 2 lb oats with a new label',
    'received 2 lb oats, label has changed',
  ])('"%s" is one', async (text) => {
    await answer(text);
    expect(await refused('made 40 oat bars')).toMatchObject({ code: 'not_possible' });
  });

  test('undo takes back what came and the notice', async () => {
    await answer('received 2 lb oats, new label');
    await answer('undo');
    expect(await data('how much oats left')).toMatchObject({ onHandG: 0 });
    expect(await refused('made 40 oat bars')).toBeUndefined();
  });

  test('a label that is said to be the same opens none', async () => {
    expect((await data('received 2 lb oats, same label')).label).toBeUndefined();
    expect(await refused('made 40 oat bars')).toBeUndefined();
  });
});
