import { describe, expect, test } from 'vitest';
import { loadBook } from '../../../src/book/load-book.ts';
import { NEEDS, type Need } from '../../../src/nutrition/allergens.ts';
import type { Food } from '../../../src/nutrition/food.ts';
import { findSwaps } from '../../../src/nutrition/swap/find-swaps.ts';
import type { LineSwap, SwapOffer } from '../../../src/nutrition/swap/offer.ts';

const book = loadBook([new URL('../../../recipes', import.meta.url).pathname]);

/** Read straight from a food's row and label, without the program's own judgment. */
const FORBIDS: Partial<Record<Need, (food: Food) => boolean>> = {
  gluten: (f) =>
    f.gluten === 'contains' || (/\boats?\b|oatmeal/i.test(f.name) && f.gluten !== 'labelled_gluten_free'),
  lactose: (f) => f.lactose !== 'none',
  animal: (f) => !f.vegan,
  meat: (f) => f.meat || !f.vegetarian,
  pork: (f) => f.pork,
  added_sugar: (f) => (f.per100g.addedSugarsG ?? 0) > 0 || /honey|syrup|^sugar|brown sugar/i.test(f.name),
};

const MARKED_BY: Partial<Record<Need, readonly string[]>> = { gluten: ['wheat'], lactose: ['milk'] };

function forbidden(food: Food, need: Need): boolean {
  const marks = MARKED_BY[need] ?? [need];
  const onLabel = [
    ...(need === 'gluten' && food.gluten === 'labelled_gluten_free'
      ? []
      : need === 'lactose'
        ? []
        : food.contains),
    ...food.advisory,
  ];
  if (onLabel.some((m) => marks.includes(m.allergen))) return true;
  const statement = `${food.product?.ingredientsStatement ?? ''} ${food.product?.advisoryStatement ?? ''}`;
  if (need === 'peanut' && /peanut/i.test(`${food.name} ${statement}`))
    return !/no peanut|free|without/i.test(statement);
  if (need === 'soy' && /soy lecithin/i.test(statement)) return true;
  return FORBIDS[need]?.(food) ?? false;
}

const asks: Need[][] = [
  ...NEEDS.map((need) => [need]),
  ...NEEDS.flatMap((a, i) => NEEDS.slice(i + 1).map((b): Need[] => [a, b])),
];

const everyOffer: { needs: readonly Need[]; offer: SwapOffer; title: string }[] = [];
for (const recipe of book.recipes.values())
  for (const needs of asks) {
    const answer = findSwaps({ recipe, foods: book.foods, recipes: book.recipes, needs, list: 'us' });
    for (const offer of answer.offers) everyOffer.push({ needs, offer, title: recipe.title });
  }

const foodsOf = (offer: SwapOffer): Food[] =>
  offer.recipe.lines.map((line) => {
    const food = book.foods.get(line.foodId);
    if (!food) throw new Error(`offer names ${line.foodId}`);
    return food;
  });

/** What a swap says it keeps, worked out again from the two foods. */
function kept(swap: LineSwap, food: Food, massG: number): number | undefined {
  const cup = food.portions.find((p) => p.unit === 'cup')?.massG;
  switch (swap.keeps) {
    case 'protein':
      return massG * (food.per100g.proteinG ?? Number.NaN);
    case 'sugars':
      return massG * (food.per100g.sugarsG ?? Number.NaN);
    case 'fat':
      return massG * (food.per100g.fatG ?? Number.NaN);
    case 'volume':
      return cup === undefined ? undefined : massG / cup;
    default:
      return massG;
  }
}

const TOLERANCE = { mass: 0.16, volume: 0.16, water: 0.02, protein: 0.015, sugars: 0.015, fat: 0.015 };

describe(`every recipe of the demo kitchen, every need and pair of needs`, () => {
  test('has been searched, and offers exist to check', () => {
    expect(book.recipes.size).toBeGreaterThanOrEqual(12);
    expect(everyOffer.length).toBeGreaterThan(1_000);
  });

  test('never an offer with what is avoided anywhere in it, or on an advisory statement', () => {
    const unsafe = everyOffer.flatMap(({ needs, offer, title }) =>
      foodsOf(offer).flatMap((food) =>
        needs.filter((need) => forbidden(food, need)).map((need) => `${title}: ${food.id} for ${need}`),
      ),
    );
    expect([...new Set(unsafe)]).toEqual([]);
  });

  test('never a package the dietitian has not approved', () => {
    const brought = everyOffer.flatMap(({ offer }) => offer.swaps.flatMap((s) => s.to ?? []));
    expect(brought.filter((f) => f.product && !f.product.approvedByDietitian).map((f) => f.id)).toEqual([]);
    const powders = brought.filter((f) => /protein/i.test(f.name) && (f.per100g.proteinG ?? 0) > 50);
    expect(powders.filter((f) => !f.product).map((f) => f.id)).toEqual([]);
  });

  test('every swap keeps what its role promises, within the stated tolerance', () => {
    const broken = everyOffer.flatMap(({ offer, title }) =>
      offer.swaps.flatMap((swap) => {
        if (!swap.to || !swap.keeps) return [];
        const before = kept(swap, swap.from, swap.massBeforeG);
        const after = kept(swap, swap.to, swap.massAfterG);
        if (before === undefined || after === undefined) return [];
        // Masses are given to a tenth of a gram, which matters for a pinch.
        const slack = TOLERANCE[swap.keeps] + 0.06 / Math.min(swap.massBeforeG, swap.massAfterG);
        return Math.abs(after / before - 1) <= slack
          ? []
          : [`${title}: ${swap.from.id} -> ${swap.to.id} ${swap.keeps}`];
      }),
    );
    expect([...new Set(broken)]).toEqual([]);
  });

  test('only the swapped lines change, and no figure is NaN', () => {
    for (const { offer, title } of everyOffer) {
      const recipe = [...book.recipes.values()].find((r) => r.title === title);
      const changed = new Set(offer.swaps.map((s) => s.lineIndex));
      const same = recipe?.lines.filter((_, i) => !changed.has(i)) ?? [];
      expect(offer.recipe.lines).toEqual(expect.arrayContaining([...same]));
      expect(offer.after.totals.of('proteinG').value).not.toBeNaN();
    }
  }, 60_000);
});
