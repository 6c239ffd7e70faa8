import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { listNow } from '../../src/kitchen/shopping/list-now.ts';
import { EMPTY_SHELF, type Shelf } from '../../src/kitchen/shopping/shelf-now.ts';
import { amountsFor, shoppingOf } from '../../src/kitchen/shopping/shopping.ts';
import { packagesFor } from '../../src/nutrition/cost/packages.ts';
import { recipeAmounts } from '../../src/nutrition/recipe-totals.ts';
import { scaleRecipe } from '../../src/nutrition/scale/scale-recipe.ts';
import { book } from '../helpers/stock-kitchen.ts';

const cards = [...book.recipes.values()];
const ids = [...book.foods.keys()];
const grams = fc.double({ min: 0, max: 50_000, noNaN: true });
const shelves: fc.Arbitrary<Shelf> = fc
  .array(fc.record({ id: fc.constantFrom(...ids), heldG: grams, pastG: grams }), { maxLength: 40 })
  .map((rows) => ({
    ...EMPTY_SHELF,
    known: new Set(rows.map(({ id }) => id)),
    heldG: new Map(rows.map(({ id, heldG }) => [id, heldG])),
    pastDateG: new Map(rows.map(({ id, heldG, pastG }) => [id, Math.min(heldG, pastG)])),
  }));
const batches = fc.array(
  fc.record({ card: fc.constantFrom(...cards), pieces: fc.integer({ min: 1, max: 2_000 }) }),
  { minLength: 1, maxLength: 6 },
);

describe('a shopping list', () => {
  test('with what is on hand covers every ingredient of every batch', () => {
    fc.assert(
      fc.property(batches, shelves, (made, shelf) => {
        const needs = made.flatMap(({ card, pieces }) =>
          amountsFor(scaleRecipe(card, book.foods, { kind: 'pieces', pieces })),
        );
        const { lines } = shoppingOf(needs, [], shelf, book);
        const exactG = new Map<string, number>();
        for (const { card, pieces } of made)
          for (const { food, massG } of recipeAmounts(card, book.foods))
            exactG.set(food.id, (exactG.get(food.id) ?? 0) + (massG * pieces) / card.yieldPieces);
        for (const [id, needG] of exactG) {
          const line = lines.find(({ food }) => food.id === id);
          const usableG = (shelf.heldG.get(id) ?? 0) - (shelf.pastDateG.get(id) ?? 0);
          const boughtG = line?.packages ? line.packages.count * line.packages.packageG : (line?.toBuyG ?? 0);
          // A hundredth, at most half a gram, is how far a scale is off.
          expect(usableG + boughtG).toBeGreaterThanOrEqual(needG - Math.min(0.5, needG / 100) - 1e-6);
        }
      }),
      { numRuns: 300 },
    );
  });

  test('buys no package that is not needed', () => {
    const priced = [...book.foods.values()].filter(({ price }) => price !== undefined);
    fc.assert(
      fc.property(
        fc.constantFrom(...priced),
        fc.double({ min: 0.01, max: 1e6, noNaN: true }),
        (food, massG) => {
          const { count, packageG, cents } = packagesFor(food, massG) ?? { count: 0, packageG: 0, cents: 0 };
          expect(Number.isInteger(count) && Number.isInteger(cents)).toBe(true);
          expect(count * packageG).toBeGreaterThanOrEqual(massG * (1 - 1e-6));
          expect((count - 1) * packageG).toBeLessThan(massG);
        },
      ),
    );
  });

  test('of a food without a package says how much, and no price', () => {
    const [food] = [...book.foods.values()].filter(({ price }) => price === undefined);
    if (!food) throw new Error('every food has a price');
    const { lines, cents, unpriced } = shoppingOf([{ food, massG: 100 }], [], EMPTY_SHELF, book);
    expect(lines).toMatchObject([{ toBuyG: 100 }]);
    expect(lines[0]?.packages).toBeUndefined();
    expect(cents).toBe(0);
    expect(unpriced).toEqual([food]);
  });
});

test('what was bought comes off what was listed, whatever the order, and never below nothing', () => {
  const steps = fc.array(fc.double({ min: -5_000, max: 5_000, noNaN: true }), { maxLength: 30 });
  fc.assert(
    fc.property(steps, (amounts) => {
      const notes = amounts.map((massG, i) => ({
        name: 'Honey',
        massG,
        wanted: true,
        who: 'ST-01',
        atMs: i,
      }));
      for (const { massG } of listNow(notes)) expect(massG).toBeGreaterThan(0);
    }),
  );
});
