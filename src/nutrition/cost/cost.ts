import type { Food } from '../food.ts';
import type { Recipe } from '../recipe.ts';
import { recipeAmounts } from '../recipe-totals.ts';
import type { FoodAmount } from '../totals.ts';

/** What an amount of food costs by the prices of its packages. */
export interface Cost {
  /** Whole cents of what has a price; a lower bound when `unpriced` is not empty. */
  readonly cents: number;
  /** The same before rounding to whole cents. */
  readonly exactCents: number;
  /** Foods whose price nobody knows, each once. */
  readonly unpriced: readonly Food[];
  readonly lines: readonly CostLine[];
}

export interface CostLine {
  readonly food: Food;
  readonly massG: number;
  /** Whole cents; absent without a price. */
  readonly cents?: number;
}

/** Cents of an amount, not rounded; `undefined` without a price. */
export function centsOf(food: Food, massG: number): number | undefined {
  const { price } = food;
  return price && price.packageG > 0 ? (massG * price.priceCents) / price.packageG : undefined;
}

/**
 * Adds up what foods cost. Rounded once, at the end: the lines may differ from the sum by a cent.
 * @example costOf([{ food: oats, massG: 810 }]).cents // 122, at $34.50 for 22,680 g
 */
export function costOf(amounts: readonly FoodAmount[]): Cost {
  let exactCents = 0;
  const unpriced = new Map<string, Food>();
  const lines = amounts.map(({ food, massG }): CostLine => {
    const cents = centsOf(food, massG);
    if (cents === undefined) unpriced.set(food.id, food);
    else exactCents += cents;
    return { food, massG, ...(cents === undefined ? {} : { cents: Math.round(cents) }) };
  });
  return { cents: Math.round(exactCents), exactCents, unpriced: [...unpriced.values()], lines };
}

/** What `pieces` of a recipe cost to make: all that goes into the bowl, optional lines included. */
export function recipeCost(recipe: Recipe, foods: ReadonlyMap<string, Food>, pieces: number): Cost {
  const factor = pieces / recipe.yieldPieces;
  return costOf(recipeAmounts(recipe, foods).map(({ food, massG }) => ({ food, massG: massG * factor })));
}
