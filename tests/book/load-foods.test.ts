import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { readFoodTable } from '../../src/book/food-table.ts';
import { loadFoods } from '../../src/book/load-foods.ts';
import { implausible } from '../../src/book/plausibility.ts';

const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
});

/** A kitchen's folder with these files in it. */
function kitchenWith(files: Record<string, string | Buffer>): string {
  const folder = mkdtempSync(join(tmpdir(), 'kitchen-'));
  folders.push(folder);
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
  return folder;
}

const GOOD: Record<string, string> = {
  id: 'house-oats',
  name: 'House oats',
  aliases: 'our oats',
  group: 'grain',
  source: 'estimate',
  source_note: 'made for a test',
  energy_kcal: '380',
  protein_g: '13',
  carbohydrate_g: '67',
  fat_g: '7',
  contains: 'gluten_cereal:oats',
  advisory: '',
  allergen_basis: 'kind',
  gluten: 'no_gluten_grain',
  lactose: 'none',
  vegan: 'yes',
  vegetarian: 'yes',
  meat: 'no',
  pork: 'no',
  roles: 'dry_base',
  storage: 'dry',
};
const HEADER = Object.keys(GOOD).join(',');
const row = (changed: Record<string, string> = {}) =>
  Object.values({ ...GOOD, ...changed })
    .map((cell) => `"${cell}"`)
    .join(',');
const tableOf = (...rows: string[]) => `${[HEADER, ...rows].join('\n')}\n`;
const load = (files: Record<string, string | Buffer>) => loadFoods([kitchenWith(files)]);
const loadRow = (changed: Record<string, string>) =>
  load({ 'foods.csv': tableOf(row(), row({ id: 'other', name: 'Other grain', aliases: '', ...changed })) });

const PRODUCT = `
id: house-whey
name: House whey
group: protein powder
serving: { name: 1 scoop, grams: 25 }
per_serving: { energy_kcal: 100, protein_g: 20, carbohydrate_g: 2, fat_g: 1.5 }
portions: [{ unit: scoop, grams: 25 }]
ingredients: Whey protein concentrate, soy lecithin.
contains: [milk, soy]
advisory: []
gluten: no_gluten_grain
lactose: contains
vegan: false
vegetarian: true
meat: false
pork: false
roles: [protein]
storage: dry
approved_by_dietitian: true
lots: [{ lot: 12, batch_tested: true, use_by: 2027-01-31 }]
`;

describe('the demo kitchen', () => {
  const { foods, problems } = loadFoods(['recipes']);

  test('has over 400 foods and nothing to complain about', () => {
    expect(problems).toEqual([]);
    expect(foods.size).toBeGreaterThan(400);
  });

  test('has a powder of each kind, one not approved and one lot not tested', () => {
    const labels = [...foods.values()].flatMap(({ product }) => product ?? []);
    const kinds = new Set(labels.map(({ proteinSource, flavor }) => `${proteinSource} ${flavor}`));
    for (const kind of ['whey vanilla', 'whey chocolate', 'whey unflavored', 'soy vanilla', 'pea unflavored'])
      expect(kinds).toContain(kind);
    expect(kinds).toContain('pea chocolate');
    expect(kinds).toContain('egg_white unflavored');
    const powders = labels.filter(({ proteinSource }) => proteinSource);
    expect(powders.filter(({ approvedByDietitian }) => !approvedByDietitian)).toHaveLength(1);
    const untested = powders.filter(
      ({ approvedByDietitian, lots }) => approvedByDietitian && lots.some((lot) => !lot.batchTested),
    );
    expect(untested).toHaveLength(1);
  });

  test('excuses only a short list of rows from the plausibility checks, each with its reason', () => {
    const { foods: rows } = readFoodTable(readFileSync('recipes/foods.csv', 'utf8'), 'foods.csv');
    const excused = rows.filter(({ implausibleBecause }) => implausibleBecause);
    expect(excused.length).toBeLessThanOrEqual(12);
    for (const { food } of excused) expect(implausible(food), food.id).not.toEqual([]);
  });

  test('gives every food a measure, but for those USDA only weighs', () => {
    const none = [...foods.values()].filter(({ portions }) => portions.length === 0).map(({ id }) => id);
    expect(none).toEqual([]);
  });

  test('never has a number that is not one, nor a negative one', () => {
    for (const { id, per100g, portions } of foods.values()) {
      for (const amount of Object.values(per100g))
        expect(Number.isFinite(amount) && amount >= 0, id).toBe(true);
      for (const { massG } of portions) expect(Number.isFinite(massG) && massG > 0, id).toBe(true);
    }
  });
});

describe('a label', () => {
  test('keeps its serving figures and gives figures per 100 g', () => {
    const food = load({ 'products/house-whey.yaml': PRODUCT }).foods.get('house-whey');
    expect(food?.product?.perServing.proteinG).toBe(20);
    expect(food?.per100g.proteinG).toBeCloseTo(80, 10);
    expect(food?.per100g.fiberG).toBeUndefined();
    expect(food?.product?.lots).toEqual([{ lot: '12', batchTested: true, useBy: '2027-01-31' }]);
  });

  test('whose ingredients name an allergen that is not declared is left out', () => {
    const { foods, problems } = load({
      'products/house-whey.yaml': PRODUCT.replace('contains: [milk, soy]', 'contains: [milk]'),
    });
    expect(foods.size).toBe(0);
    expect(problems[0]).toMatchObject({ file: 'products/house-whey.yaml', field: 'contains' });
    expect(problems[0]?.message).toMatch(/soy/);
  });

  test('whose warning names an allergen that is not in advisory is left out', () => {
    const warned = `${PRODUCT}advisory_statement: May contain peanuts. Packed in a facility free of sesame.\n`;
    const { problems } = load({ 'products/house-whey.yaml': warned });
    expect(problems.map(({ field, message }) => `${field} ${message}`).join()).toMatch(/advisory .*peanut/);
    expect(problems).toHaveLength(1);
  });

  test('with a misspelt key says which line', () => {
    const { problems } = load({ 'products/a.yaml': PRODUCT.replace('storage:', 'storrage:') });
    expect(problems.map(({ field }) => field)).toContain('storage');
    expect(problems.find(({ field }) => field === 'storrage')?.line).toBe(18);
  });

  test('that is not YAML is one problem with its line', () => {
    const { foods, problems } = load({ 'products/a.yaml': 'id: [1\nname: }' });
    expect(foods.size).toBe(0);
    expect(problems).toHaveLength(1);
    expect(problems[0]?.line).toBeGreaterThan(0);
  });

  test('with NaN or a negative figure is left out', () => {
    for (const figure of ['.nan', '.inf', '-3', 'lots']) {
      const text = PRODUCT.replace('protein_g: 20', `protein_g: ${figure}`);
      const { foods, problems } = load({ 'products/a.yaml': text });
      expect(foods.size, figure).toBe(0);
      expect(problems[0]?.field, figure).toBe('per_serving.protein_g');
    }
  });
});

describe('a bad row', () => {
  test.each([
    ['protein_g', 'NaN'],
    ['protein_g', '-3'],
    ['protein_g', '1e3'],
    ['protein_g', '12 g'],
    ['id', 'Other Grain'],
    ['gluten', 'free'],
    ['contains', 'nuts'],
    ['contains', 'tree_nut'],
    ['vegan', 'maybe'],
    ['roles', 'glue'],
    ['source', 'usda'],
    ['storage', 'shelf'],
  ])('with %s "%s" is told by line and left out; the good one stays', (field, cell) => {
    const { foods, problems } = loadRow({ [field]: cell });
    expect([...foods.keys()]).toEqual(['house-oats']);
    expect(problems[0]).toMatchObject({ file: 'foods.csv', line: 3 });
    expect(problems[0]?.field).toMatch(new RegExp(`^${field}`));
    expect(problems[0]?.hint).not.toBe('');
  });

  test('says which allergen words are accepted', () => {
    expect(loadRow({ contains: 'nuts' }).problems[0]?.hint).toMatch(/milk, egg, fish.*tree_nut:almond/);
  });

  test('that repeats an id is left out', () => {
    const { foods, problems } = loadRow({ id: 'house-oats' });
    expect(foods.get('house-oats')?.name).toBe('House oats');
    expect(problems[0]?.message).toMatch(/already used in line 2/);
  });

  test('whose name demands an allergen must declare it', () => {
    const { foods, problems } = loadRow({ name: 'Oats with almonds' });
    expect(foods.has('other')).toBe(false);
    expect(problems[0]?.message).toMatch(/almonds.*tree_nut/);
  });

  test.each([
    ['vegan', { contains: 'milk;gluten_cereal:oats' }],
    ['gluten', { contains: 'wheat' }],
    ['vegetarian', { meat: 'yes', vegan: 'no' }],
    ['contains', { lactose: 'contains' }],
  ])('that contradicts itself in %s is left out', (field, changed) => {
    const { foods, problems } = loadRow(changed);
    expect(foods.has('other')).toBe(false);
    expect(problems.map((problem) => problem.field)).toContain(field);
  });

  test('with implausible figures is left out unless it says why', () => {
    expect(loadRow({ energy_kcal: '38' }).foods.has('other')).toBe(false);
    const explained = load({
      'foods.csv': `${HEADER},implausible_because\n${row({ energy_kcal: '38' })},a test of it\n`,
    });
    expect(explained.foods.has('house-oats')).toBe(true);
  });

  test('with a cell too many is told and left out', () => {
    const { foods, problems } = load({ 'foods.csv': tableOf(row(), `${row({ id: 'other' })},more`) });
    expect([...foods.keys()]).toEqual(['house-oats']);
    expect(problems[0]?.line).toBe(3);
  });
});

describe('a whole file or folder', () => {
  test('that is not there is told, and the built-in foods work', () => {
    const { foods, problems } = loadFoods(['recipes', '/no/such/kitchen']);
    expect(foods.size).toBeGreaterThan(400);
    expect(problems).toMatchObject([{ file: '/no/such/kitchen' }]);
  });

  test.each([
    ['empty', ''],
    ['prose', 'Dear kitchen,\nplease find the foods attached.\n'],
    ['an unclosed quote', `${HEADER}\n"house-oats,House`],
    ['binary', Buffer.from([0, 1, 2, 0, 255, 254])],
  ])('that is %s instead of a table is told', (_, text) => {
    const { foods, problems } = load({ 'foods.csv': text });
    expect(foods.size).toBe(0);
    expect(problems.length).toBeGreaterThan(0);
    expect(problems[0]?.file).toBe('foods.csv');
  });

  test('with an unknown column says what the columns are and reads the rest', () => {
    const { foods, problems } = load({ 'foods.csv': `${HEADER},magic\n${row()},9\n` });
    expect(foods.size).toBe(1);
    expect(problems[0]).toMatchObject({ field: 'magic', line: 1 });
  });

  test('with columns in another order and Windows line ends reads the same', () => {
    const names = Object.keys(GOOD).reverse();
    const cells = names.map((name) => GOOD[name]);
    const { foods } = load({ 'foods.csv': `\uFEFF${names.join(',')}\r\n${cells.join(',')}\r\n` });
    expect(foods.get('house-oats')?.per100g.proteinG).toBe(13);
  });

  test('of a kitchen replaces a built-in food and adds portions to another', () => {
    const folder = kitchenWith({
      'foods.csv': tableOf(row({ id: 'rolled-oats', name: 'Rolled oats', aliases: 'pb' })),
      'portions.csv': 'food,unit,qualifier,mass_g\nhoney,squeeze,,12\nrolled-oats,cup,,90\n',
    });
    const { foods, problems } = loadFoods(['recipes', folder]);
    expect(problems).toEqual([]);
    expect(foods.get('rolled-oats')?.per100g.proteinG).toBe(13);
    expect(foods.get('rolled-oats')?.portions.find(({ unit }) => unit === 'cup')?.massG).toBe(90);
    expect(foods.get('honey')?.portions).toContainEqual({ unit: 'squeeze', massG: 12, estimated: true });
    expect(foods.get('rolled-oats')?.aliases).toContain('pb');
    expect(foods.get('peanut-butter')?.aliases).not.toContain('pb');
  });

  test('with a word that two foods claim gives it to the first and tells', () => {
    const { foods, problems } = loadRow({ aliases: 'Our Oats;grain' });
    expect(foods.get('other')?.aliases).toEqual(['grain']);
    expect(problems[0]?.message).toMatch(/already means house-oats/);
  });

  test('with a bad portion keeps the good ones', () => {
    const { foods, problems } = load({
      'foods.csv': tableOf(row()),
      'portions.csv':
        'food,unit,qualifier,mass_g\nhouse-oats,cup,,80\nhouse-oats,tbsp,,0\nnone,cup,,3\nhouse-oats,2 cups,,160\n',
    });
    expect(foods.get('house-oats')?.portions).toHaveLength(1);
    expect(problems.map(({ line }) => line).sort()).toEqual([3, 4, 5]);
  });
});
