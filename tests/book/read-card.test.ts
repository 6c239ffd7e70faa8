import { describe, expect, test } from 'vitest';
import { plain, read, recipeOf } from './cards.ts';

const lineOf = (line: unknown) => recipeOf(plain({ ingredients: [line] })).lines[0];
const complaint = (card: unknown) => read(card).complaints[0];

describe('a card with only title, yield and ingredients', () => {
  test('is a recipe, kept cold and cautiously', () => {
    const recipe = recipeOf(plain());
    expect(recipe).toMatchObject({
      id: 'test-bars',
      yieldPieces: 12,
      pieceUnit: 'bar',
      kind: 'no_bake_bar',
      storage: 'refrigerated',
      shelfLifeDays: 4,
      moistureLoss: 0,
      handlingLoss: 0,
      set: { leastMin: 60, betterMin: 120 },
    });
    expect(recipe.pan).toBeUndefined();
    expect(recipe.lines.map(({ massG }) => massG)).toEqual([162, 122]);
  });

  test('is taken for a baked bar when its method has an oven, and loses a tenth there', () => {
    const recipe = recipeOf(plain({ method: 'Mix.\nBake 20 minutes.' }));
    expect(recipe).toMatchObject({
      kind: 'baked_bar',
      moistureLoss: 0.1,
      steps: [{ text: 'Mix.' }, { text: 'Bake 20 minutes.' }],
    });
  });
});

describe('an ingredient', () => {
  test.each([
    ['1 1/2 cups rolled oats, toasted', 121.5],
    ['2 Tbsp honey', 42],
    ['honey, 2 Tbsp', 42],
    ['500 g greek yogurt', 500],
    ['500g greek yogurt', 500],
    ['3 large eggs', 150],
    ['3 eggs', 150],
    ['2 bananas', 236],
    ['1 cup ripe banana, mashed', 225],
    ['1 cup banana, sliced', 150],
    ['1 (15 oz) can black beans', 425.2],
    ['salt, pinch', 0.375],
    ['a pinch of salt', 0.375],
    ['salt, to taste', 0.375],
    ['2-3 Tbsp honey', 52.5],
    ['1/4 cup plus 1 tbsp honey', 105],
    ['2 cups oats (160 g)', 160],
    [{ food: 'rolled oats', amount: 2, unit: 'cups' }, 162],
    [{ food: 'rolled oats', amount: '2 cups' }, 162],
    [{ food: 'rolled oats', amount: '1 1/2', unit: 'cup' }, 121.5],
    [{ food: 'rolled oats', grams: 200 }, 200],
    [{ food: 'rolled oats', amount: 2, unit: 'cups', grams: 170 }, 170],
    [{ food: 'egg', amount: 2 }, 100],
    [{ food: '2 cups rolled oats' }, 162],
    [{ 'rolled oats': '2 cups' }, 162],
    [{ food: 'banana', amount: 1, unit: 'cup', prep: 'ripe and mashed' }, 225],
  ])('%j weighs %d g', (line, massG) => {
    expect(lineOf(line)?.massG).toBeCloseTo(massG, 1);
  });

  test('keeps its amount as an exact ratio', () => {
    expect(lineOf({ food: 'oats', amount: '2/3', unit: 'cup' })?.amount).toEqual({
      numerator: 2,
      denominator: 3,
    });
  });

  test('says how it is measured by its unit', () => {
    expect(lineOf('2 cups oats')?.measuredBy).toBe('levelled');
    expect(lineOf('200 g oats')?.measuredBy).toBe('weighed');
    expect(lineOf('2 eggs')?.measuredBy).toBe('counted');
    expect(lineOf({ food: 'oats', amount: 2, unit: 'cups', measured: 'scooped' })?.measuredBy).toBe(
      'scooped',
    );
  });

  test('takes the first role of its food unless the card gives one', () => {
    expect(lineOf('2 Tbsp honey')?.role).toBe('binder');
    expect(lineOf({ food: 'honey', amount: 2, unit: 'Tbsp', role: 'sweetener' })?.role).toBe('sweetener');
  });

  test('may be optional and may have a tolerance of its own', () => {
    expect(lineOf('2 Tbsp honey (optional)')?.optional).toBe(true);
    expect(lineOf({ food: 'milk', amount: '1/2', unit: 'cup', tolerance: '10 %' })?.tolerance).toBeCloseTo(
      0.1,
    );
  });

  test.each([
    ['2 cups rolled barley', /no food called/, /Nearest|foods\.csv/],
    ['2 cups greek yogurt', /weighs/, /grams/i],
    [{ food: 'oats', amount: 2, unit: 'bushels' }, /not a measure/, /cup/],
    [{ food: 'oats', amount: 0, unit: 'cup' }, /nothing/, /above 0/],
    [{ food: 'oats', amount: -2, unit: 'cup' }, /less than nothing/, /Write a number/],
    [{ food: 'oats', amount: '1/0', unit: 'cup' }, /zero/, /Write a number/],
    [{ food: 'oats', amount: Number.NaN, unit: 'cup' }, /number/i, /Write/],
    [{ food: 'oats', amount: 2, unit: 'cup', role: 'hero' }, /not a role/, /dry_base/],
    [{ food: 'oats', amount: 2, unit: 'cup', colour: 'red' }, /not a field/, /prep/],
    [{ amount: 2, unit: 'cup' }, /food/, /Write/],
    ['oats', /no amount/, /1 1\/2 cups/],
    [['oats'], /line of text/, /one ingredient a line/],
  ])('%j is refused with its place and a way out', (line, message, hint) => {
    const { recipe, complaints } = read(plain({ ingredients: ['1 cup milk', line] }));
    expect(recipe).toBeUndefined();
    expect(complaints[0]?.path.slice(0, 2)).toEqual(['ingredients', 1]);
    expect(complaints[0]?.message).toMatch(message);
    expect(complaints[0]?.hint).toMatch(hint);
  });
});

describe('a yield', () => {
  test.each([
    ['12 bars', 12, 'bar'],
    ['Makes 12 large bars', 12, 'bar'],
    ['about 24 bites', 24, 'bite'],
    ['1 dozen muffins', 12, 'muffin'],
    ['a dozen cookies', 12, 'cookie'],
    ['serves 4', 4, 'serving'],
    [16, 16, 'serving'],
    [{ pieces: 10, unit: 'cups' }, 10, 'cup'],
  ])('%j', (written, pieces, unit) => {
    expect(recipeOf(plain({ yield: written }))).toMatchObject({ yieldPieces: pieces, pieceUnit: unit });
  });

  test.each([0, -3, Number.NaN, 2.5, '0 bars', '-3 bars', '12-16 bars', 'some', 1e9, null, [12]])(
    '%j is refused',
    (written) => {
      const { recipe, complaints } = read(plain({ yield: written }));
      expect(recipe).toBeUndefined();
      expect(complaints[0]?.path).toEqual(['yield']);
      expect(complaints[0]?.hint).toBe('Write yield: 12 bars');
    },
  );
});

describe('the other fields', () => {
  test.each([
    [{ pan: '9 x 13' }, { pan: { id: '9x13' } }],
    [{ pan: '13x9 inch pan' }, { pan: { id: '9x13' } }],
    [{ pan: '8-inch square pan' }, { pan: { id: '8x8' } }],
    [{ title: 'Батончики' }, { id: 'from-file' }],
    [{ title: "Grandma's bars" }, { id: 'grandmas-bars' }],
    [{ pan: 'half sheet' }, { pan: { id: 'half_sheet' } }],
    [{ pan: { length: 10, width: 10 } }, { pan: { lengthIn: 10, widthIn: 10, depthIn: 2 } }],
    [{ pan: '7x11' }, { pan: { lengthIn: 11, widthIn: 7 } }],
    [{ cut: '3 x 4' }, { cut: { rows: 3, columns: 4 } }],
    [{ set: { least: 60, better: '2 hours' } }, { set: { leastMin: 60, betterMin: 120 } }],
    [{ set: '1 h' }, { set: { leastMin: 60, betterMin: 60 } }],
    [{ storage: 'Fridge' }, { storage: 'refrigerated' }],
    [{ 'Shelf life': '5 days' }, { shelfLifeDays: 5 }],
    [{ moisture_loss: '12 %' }, { moistureLoss: 0.12 }],
    [{ wet_dry: '0.7 - 0.9' }, { wetDry: { least: 0.7, most: 0.9 } }],
    [{ bowl: '3 kg' }, { bowlG: 3000 }],
    [{ aliases: 'Bars, oat bar' }, { aliases: ['bars', 'oat bar'] }],
    [{ version: '2026-08-17' }, { version: '2026-08-17' }],
    [
      { directions: ['1. Mix.', { text: 'Bake.', watch: 'middle', limit: '160 °F' }] },
      {
        steps: [{ text: 'Mix.' }, { text: 'Bake.', control: { watch: 'middle', limit: '160 °F' } }],
      },
    ],
  ])('%j', (field, expected) => {
    expect(recipeOf(plain(field))).toMatchObject(expected);
  });

  test.each([
    [{ pan: 'wok' }, 'pan', /no pan/],
    [{ cut: '3 x 5' }, 'cut', /15 pieces, but the yield is 12/],
    [{ cut: 'small' }, 'cut', /rows by columns/],
    [{ storage: 'under the desk' }, 'storage', /keeping food/],
    [{ shelf_life_days: 30 }, 'shelf_life_days', /more than this kitchen allows/],
    [{ moisture_loss: 1.5 }, 'moisture_loss', /share/],
    [{ wet_dry: '0.9-0.7' }, 'wet_dry', /more to less/],
    [{ set: { least: 120, better: 60 } }, 'set', /shorter/],
    [{ version: '2026-02-30' }, 'version', /not a date/],
    [{ kind: 'soup' }, 'kind', /no kind/],
    [{ id: '!!!' }, 'id', /made into an id/],
    [{ title: '' }, 'title', /empty/],
  ])('%j is refused at its field', (field, path, message) => {
    const { recipe, complaints } = read(plain(field));
    expect(recipe).toBeUndefined();
    expect(complaints[0]).toMatchObject({ path: [path], message: expect.stringMatching(message) });
    expect(complaints[0]?.hint).not.toBe('');
  });

  test('an unknown field is told and the recipe still works', () => {
    const { recipe, complaints } = read(plain({ oven_light: 'on' }));
    expect(recipe?.title).toBe('Test bars');
    expect(complaints).toHaveLength(1);
    expect(complaints[0]?.message).toMatch(/"oven_light" is not a field/);
  });

  test('a field written under another name is complained of under that name', () => {
    expect(complaint({ name: 'X', makes: 'none', ingredients: ['1 cup milk'] })?.path).toEqual(['makes']);
  });

  test('everything wrong is told at once', () => {
    const { complaints } = read(plain({ yield: 0, cut: 'x', storage: 'sky', ingredients: ['2 cups chaff'] }));
    expect(complaints.map(({ path }) => path[0]).sort()).toEqual(['cut', 'ingredients', 'storage', 'yield']);
  });

  test.each([null, 'text', 12, true, [], {}])('%j is no recipe', (value) => {
    const { recipe, complaints } = read(value);
    expect(recipe).toBeUndefined();
    expect(complaints.length).toBeGreaterThan(0);
  });
});

test('a line written as fields is said as a person would say it', () => {
  const fields = { food: 'honey', amount: '1 1/2', unit: 'cup', prep: 'warmed' };
  expect(recipeOf(plain({ ingredients: [fields] })).lines[0]?.written).toBe('1 1/2 cups honey, warmed');
});
