import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { centsOf, costOf, recipeCost } from '../../src/nutrition/cost/cost.ts';
import type { Food } from '../../src/nutrition/food.ts';
import { book, recipe } from '../helpers/stock-kitchen.ts';

function priced(priceCents: number, packageG: number, id = 'rolled-oats'): Food {
  const food = book.foods.get(id);
  if (!food) throw new Error(`no ${id}`);
  return { ...food, price: { priceCents, packageG, packageName: 'bag', section: 'dry goods' } };
}

function unpriced(id: string): Food {
  const { price: _price, ...food } = priced(1, 1, id);
  return food;
}

describe('what an amount costs', () => {
  test('by hand: 810 g of a 22,680 g bag at $34.50 is 3450 x 810 / 22680 = 123.2 cents', () => {
    expect(centsOf(priced(3450, 22_680), 810)).toBeCloseTo(123.214, 3);
    expect(costOf([{ food: priced(3450, 22_680), massG: 810 }]).cents).toBe(123);
  });

  test('by hand: three lines of 0.4 cents are 1 cent, rounded once at the end', () => {
    const line = { food: priced(4, 1_000), massG: 100 };
    expect(costOf([line, line, line])).toMatchObject({ cents: 1, unpriced: [] });
  });

  test('what has no price makes the sum a lower bound and is named once', () => {
    const raisins = { food: unpriced('raisins'), massG: 50 };
    const {
      cents,
      unpriced: missing,
      lines,
    } = costOf([{ food: priced(100, 100), massG: 50 }, raisins, raisins]);
    expect(cents).toBe(50);
    expect(missing.map(({ id }) => id)).toEqual(['raisins']);
    expect(lines[1]).not.toHaveProperty('cents');
  });

  test('sums are whole cents, never below zero, and at most half a cent from the exact sum', () => {
    const amount = fc.record({
      food: fc
        .tuple(fc.integer({ min: 0, max: 1_000_000 }), fc.integer({ min: 1, max: 100_000 }))
        .map(([cents, massG]) => priced(cents, massG)),
      massG: fc.double({ min: 0, max: 100_000, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(amount, { maxLength: 12 }), (amounts) => {
        const { cents, exactCents, lines } = costOf(amounts);
        expect(Number.isInteger(cents) && cents >= 0).toBe(true);
        expect(Math.abs(cents - exactCents)).toBeLessThanOrEqual(0.5);
        for (const line of lines) expect(Number.isInteger(line.cents)).toBe(true);
      }),
    );
  });

  test('a batch costs in proportion to its pieces', () => {
    const bars = recipe('oat-bars');
    const twelve = recipeCost(bars, book.foods, 12).exactCents;
    expect(recipeCost(bars, book.foods, 40).exactCents).toBeCloseTo((twelve * 40) / 12, 6);
  });
});
