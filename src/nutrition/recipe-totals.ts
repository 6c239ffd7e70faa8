import type { Food } from './food.ts';
import { Problem } from './problem.ts';
import type { Recipe } from './recipe.ts';
import { type FoodAmount, type Totals, totals } from './totals.ts';

/** What one yield of a recipe holds, and what reaches the pieces. */
export interface RecipeTotals {
  readonly recipe: Recipe;
  /** Everything weighed into the bowl. */
  readonly raw: Totals;
  /** What reaches the pieces: `raw` less what stays in the bowl and on trimmings. Mass is before the oven. */
  readonly served: Totals;
  /** Grams of all pieces together as they are eaten: after handling and moisture loss. */
  readonly finishedMassG: number;
}

/** Nutrients and mass of one piece at some cut. */
export interface PieceTotals {
  readonly pieces: number;
  readonly totals: Totals;
  /** Grams of one piece as eaten. */
  readonly pieceMassG: number;
}

/** The foods and grams of one recipe yield, optional lines included. Throws `unknown_food` for a missing food. */
export function recipeAmounts(recipe: Recipe, foods: ReadonlyMap<string, Food>): FoodAmount[] {
  return recipe.lines.map((line) => {
    const food = foods.get(line.foodId);
    if (!food) {
      throw new Problem(
        'unknown_food',
        `"${recipe.title}" names a food this kitchen does not have: ${line.foodId}.`,
        'Add the food to the kitchen folder or correct the recipe line.',
      );
    }
    return { food, massG: line.massG };
  });
}

/**
 * Nutrients of one yield. Moisture loss takes water out of the finished mass and leaves nutrients; handling
 * loss takes a share of everything. `amounts` replaces the recipe's own foods when something was added or left out.
 */
export function recipeTotals(
  recipe: Recipe,
  foods: ReadonlyMap<string, Food>,
  amounts: readonly FoodAmount[] = recipeAmounts(recipe, foods),
): RecipeTotals {
  const raw = totals(amounts);
  const served = raw.times(1 - recipe.handlingLoss);
  return { recipe, raw, served, finishedMassG: served.massG * (1 - recipe.moistureLoss) };
}

/**
 * Nutrients of one piece when a yield is cut into `pieces`.
 * Example: a slab with 162 g protein cut into 8 gives 20.25 g a piece. Throws `bad_quantity` unless 1 or more.
 */
export function perPiece(whole: RecipeTotals, pieces: number = whole.recipe.yieldPieces): PieceTotals {
  if (!Number.isSafeInteger(pieces) || pieces < 1) {
    throw new Problem(
      'bad_quantity',
      'A batch is cut into a whole number of pieces, one or more.',
      'Write a number, like "cut into 8".',
    );
  }
  return { pieces, totals: whole.served.times(1 / pieces), pieceMassG: whole.finishedMassG / pieces };
}

/** Nutrients of 100 g as eaten. Throws `not_possible` when nothing is left to weigh. */
export function per100g(whole: RecipeTotals): Totals {
  if (whole.finishedMassG <= 0) {
    throw new Problem(
      'not_possible',
      'There is nothing in this mix to weigh.',
      'Add an ingredient with an amount.',
    );
  }
  return whole.served.times(100 / whole.finishedMassG);
}
