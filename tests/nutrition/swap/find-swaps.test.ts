import { describe, expect, test } from 'vitest';
import type { Need } from '../../../src/nutrition/allergens.ts';
import type { Food } from '../../../src/nutrition/food.ts';
import type { Recipe } from '../../../src/nutrition/recipe.ts';
import { findSwaps, tryReplacement } from '../../../src/nutrition/swap/find-swaps.ts';
import { findGeneralSwaps } from '../../../src/nutrition/swap/general-swap.ts';
import { oatBar, onShelf, PANTRY, RECIPES } from './pantry.ts';

const asked = (needs: readonly Need[], without: readonly Food[] = [], recipe: Recipe = oatBar) => ({
  recipe,
  foods: PANTRY,
  recipes: RECIPES,
  needs,
  without,
  list: 'us' as const,
});
const names = (answer: ReturnType<typeof findSwaps>) =>
  answer.offers.map((offer) => offer.swaps.map((swap) => swap.to?.id));

describe('a swap by need', () => {
  test('nut-free is sunflower seed butter, never the one with a nut advisory, never mayonnaise', () => {
    const answer = findSwaps(asked(['peanut', 'tree_nut']));
    expect(names(answer)).toEqual([['sunflower-seed-butter']]);
    expect(answer.offers[0]).toMatchObject({ lost: ['peanut'], gained: [], stillThere: [] });
  });

  test('vegan changes every line that has to change, together', () => {
    const [best] = findSwaps(asked(['animal'])).offers;
    expect(best?.swaps.map((s) => s.to?.id)).toEqual([
      'kitchen-pea-powder',
      'maple-syrup',
      'oat-drink-labelled-gluten-free',
      'dark-chocolate-chips-dairy-free',
    ]);
    expect(best?.allergensAfter.vegan.status).toBe('yes');
  });

  test('gluten-free takes the oats labelled gluten-free', () => {
    expect(names(findSwaps(asked(['gluten'])))).toEqual([['rolled-oats-labelled-gluten-free']]);
  });

  test('a powder the dietitian has not approved is never offered', () => {
    const offered = findSwaps(asked(['milk'])).offers.flatMap((o) => o.swaps.map((s) => s.to?.id));
    expect(offered).toContain('kitchen-pea-powder');
    expect(offered).not.toContain('shelf-pea-powder-not-approved');
  });

  test('says which ingredient blocks when nothing serves', () => {
    const few = new Map([...PANTRY].filter(([id]) => id !== 'sunflower-seed-butter'));
    const answer = findSwaps({ ...asked(['peanut', 'tree_nut']), foods: few });
    expect(answer.offers).toEqual([]);
    expect(answer.blocked.map((b) => b.food.id)).toEqual(['peanut-butter-smooth']);
  });

  test('has nothing to swap when the recipe already meets the need', () => {
    expect(findSwaps(asked(['fish'])).nothingToSwap).toBe(true);
  });

  test('leaves out an optional ingredient for which there is nothing', () => {
    const lines = oatBar.lines.map((l) => (l.foodId === 'chocolate-chips' ? { ...l, optional: true } : l));
    const noChips = new Map(
      [...PANTRY].filter(([id]) => !id.startsWith('dark-') && !id.startsWith('pumpkin')),
    );
    const answer = findSwaps({
      ...asked(['milk', 'tree_nut', 'soy']),
      recipe: { ...oatBar, lines },
      foods: noChips,
    });
    const chips = answer.offers[0]?.swaps.find((s) => s.from.id === 'chocolate-chips');
    expect(chips).toMatchObject({ massAfterG: 0 });
    expect(answer.offers[0]?.recipe.lines.some((l) => l.foodId === 'chocolate-chips')).toBe(false);
  });
});

describe('a swap by ingredient', () => {
  test('out of milk is a plant milk, one of them without a new allergen first, never orange juice', () => {
    const answer = findSwaps(asked([], [onShelf('milk-2-')]));
    expect(names(answer).flat().slice(0, 2)).toEqual(['oat-drink-labelled-gluten-free', 'soymilk-plain']);
    expect(names(answer).flat()).not.toContain('orange-juice');
  });

  test('a liquid keeps its volume', () => {
    const offer = tryReplacement(asked([], [onShelf('milk-2-')]), onShelf('soymilk-plain'));
    expect(offer?.swaps[0]).toMatchObject({ keeps: 'volume', ratio: 1, massAfterG: 119.5 });
  });

  test('protein powder is matched by protein', () => {
    const [best] = findSwaps(asked(['milk'])).offers;
    const powder = best?.swaps.find((s) => s.role === 'protein');
    expect((powder?.massAfterG ?? 0) * (powder?.to?.per100g.proteinG ?? 0)).toBeCloseTo(150 * 78, -1);
  });

  test('says when the changed dough falls out of its range and how much liquid mends it', () => {
    const dryer: Recipe = { ...oatBar, wetDry: { least: 0.74, most: 0.8 } };
    const [best] = findSwaps(asked(['milk'], [], dryer)).offers;
    expect(best?.texture.feel).toBe('too_dry');
    expect(best?.texture.tablespoons).toBeGreaterThanOrEqual(1);
  });
});

describe('a replacement somebody named', () => {
  test('is worked out, with what still speaks against the need', () => {
    const offer = tryReplacement(
      asked(['peanut', 'tree_nut'], [onShelf('peanut-butter-smooth')]),
      onShelf('almond-butter'),
    );
    expect(offer).toMatchObject({ gained: ['tree_nut'], lost: ['peanut'] });
    expect(offer?.stillThere).toMatchObject([{ need: 'tree_nut', food: { id: 'almond-butter' } }]);
  });

  test('does not change the recipe it was asked about', () => {
    const before = structuredClone(oatBar);
    tryReplacement(asked([], [onShelf('honey')]), onShelf('maple-syrup'));
    findSwaps(asked(['animal', 'gluten']));
    expect(oatBar).toEqual(before);
  });
});

test('outside any recipe an ingredient is swapped in the first role it plays', () => {
  const answer = findGeneralSwaps(onShelf('honey'), 100, {
    foods: PANTRY,
    recipes: RECIPES,
    needs: ['animal'],
    list: 'us',
  });
  expect(answer.offers[0]?.swaps[0]).toMatchObject({ to: { id: 'maple-syrup' }, keeps: 'sugars' });
});
