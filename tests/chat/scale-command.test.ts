import { describe, expect, test } from 'vitest';
import { DEFAULT_SETTINGS } from '../../src/book/settings-file.ts';
import { measure } from '../../src/chat/commands/measure/index.ts';
import { scale } from '../../src/chat/commands/scale/index.ts';
import type { Book } from '../../src/nutrition/book.ts';
import { conversationWith, kitchenOf, wordsOf } from '../helpers/scale-kitchen.ts';
import { FOODS, PANS, TEST_BAR } from '../helpers/scaled-recipes.ts';

const book: Book = {
  settings: { ...DEFAULT_SETTINGS, pans: PANS, piecesPerPerson: 1 },
  foods: FOODS,
  recipes: new Map([[TEST_BAR.id, TEST_BAR]]),
  problems: [],
};
const bench = () => conversationWith(scale, kitchenOf(book));
const convert = () => conversationWith(measure, kitchenOf(book));

describe('a batch at the bench', () => {
  test('40 bars: the number first, measures and grams, pans, cut, allergens on top', async () => {
    const answer = await bench()({ quantity: 40, recipe: 'test_bar' });
    expect(answer.title).toMatch(/^40 bars of test bar: /);
    expect(answer.sections[0]).toMatchObject({
      kind: 'text',
      text: expect.stringContaining('Cross-contact'),
    });
    expect(wordsOf(answer)).toContain('rolled oats | 2 qt + 2 cups | 810');
    expect(wordsOf(answer)).toMatch(/Slab: .*half sheet|quarter sheet/);
    expect(answer.data).toMatchObject({ factor: 2.5, pieces: 40 });
  });

  test('which recipe was taken is said when none was named, once', async () => {
    const named: Book = {
      ...book,
      recipes: new Map([[TEST_BAR.id, { ...TEST_BAR, aliases: [...TEST_BAR.aliases, 'bars'] }]]),
    };
    const ask = conversationWith(scale, kitchenOf(named));
    expect(wordsOf(await ask({ quantity: 40, unit: 'bar' }))).toContain('"bars" alone means test bar here');
    expect(wordsOf(await ask({ quantity: 60, unit: 'bar' }))).not.toContain('alone means');
  });

  test('follow-ups lean on the batch before: grams, another count, doubled, cut otherwise', async () => {
    const ask = bench();
    await ask({ quantity: 40, recipe: 'test_bar' });
    expect(wordsOf(await ask({ output_unit: 'g' }))).toContain('rolled oats | 810 g');
    expect((await ask({ quantity: 60 })).data).toMatchObject({ pieces: 60, factor: 3.75 });
    expect((await ask({ factor: 2 })).data).toMatchObject({ pieces: 120 });
    expect((await ask({ quantity: 40, pieces: 8, recipe: 'test_bar' })).data).toMatchObject({
      pieces: 40,
      factor: 5,
    });
    expect((await ask({ quantity: 16, recipe: 'test_bar', piece_g: 50 })).data).toMatchObject({
      exactPieceG: 50,
    });
  });

  test('a slip told without its recipe asks which one, and the answer puts it right', async () => {
    const second: Book = {
      ...book,
      recipes: new Map([
        [TEST_BAR.id, TEST_BAR],
        ['other_bar', { ...TEST_BAR, id: 'other_bar', title: 'other bar', aliases: [] }],
      ]),
    };
    const foodId = TEST_BAR.lines[0]?.foodId;
    const slip = { problem: 'overadded', ingredient: foodId, factor: 2 };
    const ask = conversationWith(scale, kitchenOf(second));
    const asked = await ask(slip);
    expect(asked.title).toMatch(/^Which recipe is the .* for\?$/);
    expect(asked.next.map(({ says }) => says)).toEqual([TEST_BAR.title, 'other bar']);
    expect(wordsOf(asked)).toContain('Do not serve the mix yet.');
    expect((await ask({ recipe: TEST_BAR.id })).data).toMatchObject({ problem: 'overadded', factor: 2 });
  });

  test('half a piece is rounded up, and said so', async () => {
    const half = await bench()({ quantity: 40.5, recipe: 'test_bar' });
    expect(half.data).toMatchObject({ pieces: 41 });
    expect(wordsOf(half)).toContain('You wrote 40.5: rounded up to 41 bars.');
    expect(wordsOf(await bench()({ quantity: 40, recipe: 'test_bar' }))).not.toContain('You wrote');
  });

  test('pans without a count are whole recipes, and a piece has a weight and no size in cups', async () => {
    expect((await bench()({ recipe: 'test_bar', pan_count: 3 })).data).toMatchObject({ factor: 3 });
    const sized = { recipe: 'test_bar', quantity: 60, portion: 0.25, portion_unit: 'cup' };
    await expect(bench()(sized)).rejects.toMatchObject({
      code: 'not_possible',
      hint: expect.stringContaining('60 g each'),
    });
  });

  test('what is missing is asked in one short question', async () => {
    expect((await bench()({ quantity: 40 })).title).toBe('Which recipe?');
    const ask = bench();
    expect((await ask({ recipe: 'test_bar' })).title).toBe('How many bars?');
    expect((await ask({ quantity: 12 })).data).toMatchObject({ pieces: 12 });
  });

  test('people, portions, a spare share, half a batch', async () => {
    const people = { quantity: 20, unit: 'person', portion: 2, extra_pct: 10, recipe: 'test_bar' };
    expect((await bench()(people)).data).toMatchObject({ pieces: 44 });
    expect((await bench()({ factor: 0.5, recipe: 'test_bar' })).data).toMatchObject({ pieces: 8 });
    expect((await bench()({ quantity: 2, unit: 'batch', recipe: 'test_bar' })).data).toMatchObject({
      pieces: 32,
    });
  });

  test('an ingredient that limits, for one recipe and over all of them', async () => {
    const jars = { ingredient: 'peanut butter', amount: 2, amount_unit: 'jar', limit_by: 'ingredient' };
    expect((await bench()({ ...jars, recipe: 'test_bar' })).data).toMatchObject({ pieces: 75 });
    expect((await bench()(jars)).title).toContain('75 bars of test bar at most');
  });

  test('a need that the recipe does not meet is said first, and only to the asker', async () => {
    const nutBar = { ...TEST_BAR, id: 'nut_bar' };
    const withNuts = new Map(FOODS);
    const butter = FOODS.get('peanut-butter');
    if (butter) withNuts.set('peanut-butter', { ...butter, contains: [{ allergen: 'peanut' }] });
    const nutty = { ...book, foods: withNuts, recipes: new Map([[nutBar.id, nutBar]]) };
    const answer = await conversationWith(
      scale,
      kitchenOf(nutty),
    )({ quantity: 40, recipe: 'nut_bar', avoid: ['peanut'] });
    expect(answer.audience).toBe('asker');
    expect(answer.sections[0]).toMatchObject({
      text: expect.stringMatching(/card as it is, NOT peanut-free/),
    });
    expect(answer.title).toMatch(/^NOT peanut-free, as on the card/);
  });

  test.each([0, -3, 1e9, 'NaN', '1/0', '1e9', '-3'])(
    '%s bars is refused with what to write',
    async (quantity) => {
      await expect(bench()({ quantity, recipe: 'test_bar' })).rejects.toMatchObject({
        code: 'bad_quantity',
        hint: expect.stringContaining('Write'),
      });
    },
  );

  test('a recipe or pan nobody knows names what there is', async () => {
    await expect(bench()({ quantity: 40, recipe: 'testy bar' })).rejects.toMatchObject({
      code: 'unknown_recipe',
      hint: expect.stringContaining('test bar'),
    });
    await expect(bench()({ pan: 'the blue one', recipe: 'test_bar' })).rejects.toMatchObject({
      hint: expect.stringContaining('half sheet pan'),
    });
  });

  test('a recipe kept elsewhere still gets its factor', async () => {
    expect((await bench()({ base_yield: 24, quantity: 60 })).title).toContain('x 2.5');
    // AFRS TM 10-412 (2003), card A-1(2): 348 portions of a recipe for 100 that takes 1.25 lb.
    const pounds = { base_yield: 100, quantity: 348, amount: 1.25, amount_unit: 'lb' };
    expect((await bench()(pounds)).title).toBe('4 lb 5 1/2 oz: x 3.48');
    const flour = { base_yield: 24, quantity: 60, amount: 3, amount_unit: 'cup', ingredient: 'flour' };
    expect((await bench()(flour)).title).toBe('1 qt + 3 1/2 cups flour: x 2.5');
  });
});

describe('a mix that went wrong', () => {
  test('doubled salt: the rest is made up to match, from the batch on the bench', async () => {
    const ask = bench();
    await ask({ quantity: 32, recipe: 'test_bar' });
    const answer = await ask({ problem: 'overadded', ingredient: 'salt', factor: 2 });
    expect(answer.data).toMatchObject({ pieces: 64, factor: 2 });
    expect(wordsOf(answer)).toContain('rolled oats | 2 qt | 648');
    expect(wordsOf(answer)).not.toMatch(/^table salt \|/m);
  });

  test("too dry names the recipe's own liquid, a tablespoon at a time; every kind of trouble has advice", async () => {
    const ask = bench();
    await ask({ quantity: 32, recipe: 'test_bar' });
    expect((await ask({ problem: 'too dry' })).title).toMatch(/1 Tbsp at a time/);
    const kinds = [
      'too wet',
      'too sticky',
      'crumbly',
      'not setting',
      'too hard',
      'too sweet',
      'too salty',
      'burnt',
      'forgot',
      'overadded',
    ];
    for (const problem of kinds) {
      expect((await ask({ problem })).sections.length).toBeGreaterThan(0);
    }
    expect((await ask({ problem: 'forgot', ingredient: 'honey' })).title).toContain('1 cup honey');
  });
});

describe('conversions', () => {
  test.each([
    [{ amount: 16, amount_unit: 'tbsp', output_unit: 'cup' }, '16 Tbsp = 1 cup'],
    [{ amount: 2, amount_unit: 'tbsp', ingredient: 'honey', output_unit: 'g' }, '2 Tbsp honey = 42 g'],
    [{ amount: 0.75, amount_unit: 'cup', factor: 0.5 }, '1/4 cup + 2 Tbsp (89 mL)'],
    [{ amount: 350, amount_unit: 'f', output_unit: 'c' }, '350 F = 176.7 C'],
    [{ amount: 1, amount_unit: 'cup', ingredient: 'rolled oats' }, '1 cup rolled oats = 81 g'],
    [{ amount: 1, amount_unit: 'cup', output_unit: 'ml' }, '1 cup = 237 mL'],
    [{ amount: 1, amount_unit: 'label_cup', output_unit: 'ml' }, '1 label cup = 240 mL'],
  ])('%j', async (slots, title) => {
    expect((await convert()(slots)).title).toBe(title);
  });

  test('a follow-up converts the same amount again', async () => {
    const ask = convert();
    await ask({ amount: 2, amount_unit: 'cup', ingredient: 'rolled oats' });
    expect((await ask({ output_unit: 'oz' })).title).toMatch(/^2 cups rolled oats = 5.71 oz/);
  });

  test('a numbered scoop says which of its two sizes was used', async () => {
    expect(wordsOf(await convert()({ amount: 1, amount_unit: 'disher_30', output_unit: 'tbsp' }))).toContain(
      'usual chart says 2 Tbsp',
    );
  });

  test.each([
    {},
    { amount: 0, amount_unit: 'cup', output_unit: 'g' },
    { amount: 8, amount_unit: 'oz', output_unit: 'cup' },
    { amount: '1/0', amount_unit: 'cup' },
    { amount: 1, amount_unit: 'furlong' },
    { amount: 1, amount_unit: 'cup', ingredient: 'unobtainium' },
  ])('%j gets a problem with a way out', async (slots) => {
    await expect(convert()(slots)).rejects.toMatchObject({
      name: 'Problem',
      hint: expect.stringMatching(/Write|Name/),
    });
  });
});
