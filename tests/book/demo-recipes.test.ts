import { describe, expect, test } from 'vitest';
import { loadBook } from '../../src/book/load-book.ts';
import { createRecipeIndex } from '../../src/nutrition/find-recipe.ts';
import type { Food } from '../../src/nutrition/food.ts';
import type { Recipe } from '../../src/nutrition/recipe.ts';
import { perPiece, recipeTotals } from '../../src/nutrition/recipe-totals.ts';
import { wetOverDry } from '../../src/nutrition/wet-dry.ts';

const book = loadBook([new URL('../../recipes', import.meta.url).pathname]);
const recipes = [...book.recipes.values()];
const titled: [string, Recipe][] = recipes.map((recipe) => [recipe.title, recipe]);

const foodsOf = (recipe: Recipe): Food[] =>
  recipe.lines.map(({ foodId }) => {
    const food = book.foods.get(foodId);
    if (!food) throw new Error(foodId);
    return food;
  });

/** Grams per piece that a kitchen would recognize, by kind. Common practice, no source. */
const PIECE_G: Partial<Record<Recipe['kind'], readonly [number, number]>> = {
  no_bake_bar: [50, 75],
  baked_bar: [50, 90],
  bites: [20, 35],
  overnight_oats: [250, 360],
  parfait: [220, 340],
  trail_mix: [40, 70],
  smoothie: [350, 560],
  roll: [80, 140],
  breakfast: [120, 220],
  muffin: [55, 90],
};

describe('the demo kitchen', () => {
  test('loads without a single problem', () => {
    expect(book.problems).toEqual([]);
    expect(recipes.length).toBeGreaterThanOrEqual(14);
  });

  test('has the kinds a snack kitchen makes, four no-bake bars among them', () => {
    expect(recipes.filter(({ kind }) => kind === 'no_bake_bar').length).toBeGreaterThanOrEqual(4);
    expect(new Set(recipes.map(({ kind }) => kind))).toEqual(new Set(Object.keys(PIECE_G)));
  });

  test.each(['bars', 'oat bars', 'oat bar', 'the bars', 'protein bars'])(
    '"%s" is the plain oat bar',
    (words) => {
      expect(createRecipeIndex(recipes).find(words)).toMatchObject({ recipe: { id: 'oat-bars' } });
    },
  );

  test.each([
    ['cherry', 'cherry-oat-bars'],
    ['nut-free bars', 'sunflower-cranberry-bars'],
    ['gf bars', 'almond-apricot-bars'],
    ['muffins', 'pumpkin-oat-muffins'],
    ['overnight oats', 'berry-overnight-oats'],
    ['smoothies', 'berry-recovery-smoothie'],
  ])('"%s" is %s', (words, id) => {
    expect(createRecipeIndex(recipes).find(words)).toMatchObject({ recipe: { id } });
  });

  test('no name belongs to two recipes', () => {
    const shared = [...createRecipeIndex(recipes).names()].filter(([, id]) => id === undefined);
    expect(shared).toEqual([]);
  });

  test('uses no generic or unapproved protein powder', () => {
    const powders = recipes
      .flatMap(foodsOf)
      .filter(({ product, name }) => product?.proteinSource || /whey|protein powder/i.test(name));
    expect(powders.length).toBeGreaterThan(0);
    expect(powders.filter(({ product }) => !product?.approvedByDietitian).map(({ name }) => name)).toEqual(
      [],
    );
  });
});

describe.each(titled)('%s', (_title, recipe) => {
  const totals = recipeTotals(recipe, book.foods);
  const piece = perPiece(totals);

  test('is a standardized recipe: version, piece, method with control points, holding rules', () => {
    expect(recipe.version).toMatch(/^2026-/);
    expect(recipe.piece).toBeTruthy();
    expect(recipe.aliases.length).toBeGreaterThan(0);
    expect(recipe.steps.some(({ control }) => control)).toBe(true);
    expect(recipe.shelfLifeDays).toBeLessThanOrEqual(recipe.storage === 'refrigerated' ? 7 : 30);
  });

  test('makes pieces of a sensible mass', () => {
    const [least, most] = PIECE_G[recipe.kind] ?? [0, 0];
    expect(piece.pieceMassG).toBeGreaterThanOrEqual(least);
    expect(piece.pieceMassG).toBeLessThanOrEqual(most);
  });

  test('holds together: wet over dry lies inside its range, with room on both sides', () => {
    if (!recipe.wetDry)
      return expect(['parfait', 'trail_mix', 'smoothie', 'roll', 'breakfast']).toContain(recipe.kind);
    const parts = recipe.lines.map(({ foodId, role, massG }) => {
      const food = book.foods.get(foodId);
      if (!food) throw new Error(foodId);
      return { food, role, massG };
    });
    const ratio = wetOverDry(parts);
    expect(ratio).toBeGreaterThan(recipe.wetDry.least * 1.05);
    expect(ratio).toBeLessThan(recipe.wetDry.most * 0.95);
  });

  test('fits its bowl and its pan, and is cut into its yield', () => {
    const massG = recipe.lines.reduce((sum, line) => sum + line.massG, 0);
    if (recipe.bowlG !== undefined) expect(massG).toBeLessThanOrEqual(recipe.bowlG * 2);
    expect(recipe.pan === undefined).toBe(recipe.cut === undefined);
    if (!recipe.pan || !recipe.cut) return;
    expect(recipe.cut.rows * recipe.cut.columns).toBe(recipe.yieldPieces);
    // Dough of about 1.1 g/mL; 16.387 mL to the cubic inch (exact: 2.54 cm to the inch).
    const thickIn = massG / 1.1 / 16.387 / (recipe.pan.lengthIn * recipe.pan.widthIn);
    expect(thickIn).toBeGreaterThan(0.4);
    expect(thickIn).toBeLessThan(recipe.pan.depthIn);
  });

  test('is held cold when it holds dairy, egg or meat', () => {
    const foods = foodsOf(recipe);
    const perishable = foods.some((food) => food.storage === 'cold' && !/nut|seed/i.test(food.group));
    if (perishable) expect(recipe.storage).toBe('refrigerated');
    if (recipe.kind === 'no_bake_bar') expect(recipe.set).toEqual({ leastMin: 60, betterMin: 120 });
  });

  test('gives the protein its kind is eaten for', () => {
    const proteinG = piece.totals.of('proteinG').value;
    const least = { no_bake_bar: 12, baked_bar: 10, overnight_oats: 15, parfait: 15, smoothie: 20, bites: 5 };
    expect(proteinG).toBeGreaterThanOrEqual(least[recipe.kind as keyof typeof least] ?? 5);
  });

  test('loses water only in an oven', () => {
    const isBaked = recipe.tags.includes('baked');
    expect(recipe.moistureLoss > 0).toBe(isBaked);
    if (isBaked) expect(recipe.steps.some(({ text }) => /oven|bake/i.test(text))).toBe(true);
  });
});

describe('what a recipe is called, its foods are', () => {
  const tagged = (tag: string) => recipes.filter(({ tags }) => tags.includes(tag));
  const marks = (food: Food) => [...food.contains, ...food.advisory].map(({ allergen }) => allergen);

  test.each([
    ['nut-free', ['peanut', 'tree_nut']],
    ['dairy-free', ['milk']],
  ])('%s: neither in a food nor on an advisory line', (tag, allergens) => {
    expect(tagged(tag).length).toBeGreaterThan(0);
    for (const food of tagged(tag).flatMap(foodsOf)) {
      expect(
        marks(food).filter((allergen) => allergens.includes(allergen)),
        food.name,
      ).toEqual([]);
    }
  });

  test('gluten-free: every grain and powder is labeled so and nothing else holds a gluten grain', () => {
    expect(tagged('gluten-free').length).toBeGreaterThan(0);
    for (const food of tagged('gluten-free').flatMap(foodsOf)) {
      expect(food.gluten, food.name).not.toBe('contains');
      if (food.product || food.roles[0] === 'dry_base')
        expect(food.gluten, food.name).toBe('labelled_gluten_free');
    }
  });

  test('vegan: nothing of animals', () => {
    expect(
      tagged('vegan')
        .flatMap(foodsOf)
        .filter(({ vegan }) => !vegan)
        .map(({ name }) => name),
    ).toEqual([]);
  });
});
