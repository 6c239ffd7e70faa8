import { describe, expect, test } from 'vitest';
import type { Food } from '../../../src/nutrition/food.ts';
import { findSwaps } from '../../../src/nutrition/swap/find-swaps.ts';
import { formOf } from '../../../src/nutrition/swap/form.ts';
import type { SwapOffer } from '../../../src/nutrition/swap/offer.ts';
import { openKitchen } from '../../../src/open-kitchen.ts';

const { book } = await openKitchen({ nowMs: () => 0 });
const { recipes, foods } = book;

/** What is offered in a recipe of the demo kitchen when one food has run out. */
function outOf(recipeId: string, foodId: string): readonly SwapOffer[] {
  const recipe = recipes.get(recipeId);
  const food = foods.get(foodId);
  if (!recipe || !food) throw new Error(`no ${recipeId} or no ${foodId}`);
  return findSwaps({ recipe, foods, recipes, needs: [], list: 'us', without: [food] }).offers;
}
const broughtIn = (offers: readonly SwapOffer[]): Food[] =>
  offers.flatMap((offer) => offer.swaps.flatMap(({ to }) => to ?? []));
const everyLine = [...recipes.values()].flatMap((recipe) =>
  recipe.lines.map((line) => [recipe.id, line.foodId] as const),
);

describe('what is offered when an ingredient has run out (common practice, no source)', () => {
  test.each(['oat-bars', 'cherry-oat-bars', 'pumpkin-oat-muffins', 'berry-recovery-smoothie'])(
    'out of milk in %s is not three dairy milks',
    (recipeId) => {
      const milks = broughtIn(outOf(recipeId, 'milk-2'));
      expect(milks).toHaveLength(3);
      const withMilk = milks.filter((food) => food.contains.some((mark) => mark.allergen === 'milk'));
      expect(withMilk.length).toBeLessThan(3);
    },
  );

  test.each(recipes.get('sunflower-cranberry-bars')?.lines.map((line) => line.foodId) ?? [])(
    'a recipe tagged nut-free is offered no peanut and no tree nut for %s',
    (foodId) => {
      for (const { allergensAfter } of outOf('sunflower-cranberry-bars', foodId))
        for (const { allergen, status } of allergensAfter.findings)
          if (allergen === 'peanut' || allergen === 'tree_nut') expect(status).toBe('not_listed');
    },
  );

  test('a recipe tagged gluten-free keeps to grains labelled so, a vegan one to plants', () => {
    const offers = outOf('almond-apricot-bars', 'oats-gluten-free');
    expect(offers.length).toBeGreaterThan(0);
    for (const offer of offers) expect(offer.allergensAfter.gluten.status).toBe('only_labelled_grains');
    for (const foodId of ['soy-milk', 'maple-syrup'])
      for (const food of broughtIn(outOf('apple-overnight-oats', foodId))) expect(food.vegan).toBe(true);
  });

  test('never a boiled egg for a raw one, a fresh herb for a vegetable or a spice, nor cloves first', () => {
    for (const [recipeId, foodId] of everyLine) {
      const names = broughtIn(outOf(recipeId, foodId)).map((food) => food.name);
      if (foodId === 'egg') expect(names).not.toContain('Egg, hard-boiled');
      expect(names).not.toContain('Mint, fresh');
      expect(names[0]).not.toBe('Cloves, ground');
    }
  });

  test('no pork for what was none', () => {
    for (const food of broughtIn(outOf('turkey-hummus-rolls', 'turkey-breast')))
      expect(food.pork).toBe(false);
  });

  test('leaves and a frozen block of them change by weight', () => {
    const [swap] = outOf('turkey-hummus-rolls', 'spinach').flatMap((offer) =>
      offer.swaps.filter(({ to }) => to?.id === 'spinach-frozen'),
    );
    expect(swap?.massAfterG).toBe(swap?.massBeforeG);
  });

  test('granola is first taken for granola, a potato for what fills as well', () => {
    const [granola] = broughtIn(outOf('strawberry-parfait-cups', 'granola'));
    expect(granola && formOf(granola)).toBe('granola');
    const fillers = broughtIn(outOf('egg-potato-squares', 'potato-baked')).map(formOf);
    expect(fillers.every((form) => form === 'starchy_vegetable' || form === 'cooked_grain')).toBe(true);
  });
});

test('what a label still advises of is not said to be taken out', () => {
  const { lost, advisoryStill, allergensAfter } = outOf('oat-bars', 'peanut-butter')
    .map((offer) => offer)
    .find((offer) => offer.swaps[0]?.to?.name.startsWith('Almond butter')) ?? { lost: [], advisoryStill: [] };
  expect(allergensAfter?.findings.find((f) => f.allergen === 'peanut')?.status).toBe('advisory');
  expect(lost).not.toContain('peanut');
  expect(advisoryStill).toContain('peanut');
});
