import type { Food } from '../food.ts';
import { type KitchenMeasure, LINE_TOLERANCE, measureBy } from '../measure/kitchen-measure.ts';
import { Problem } from '../problem.ts';
import type { Recipe } from '../recipe.ts';
import { recipeTable } from './recipe-table.ts';

/** One ingredient and how much of it to add. */
export interface Addition {
  readonly food: Food;
  readonly measure: KitchenMeasure;
}

/** How to make the rest of a recipe match an ingredient that went in too much. */
export interface Rescue {
  /** Batches the mix becomes, in shares of what was meant: 2 when an ingredient was doubled. */
  readonly factor: number;
  readonly pieces: number;
  readonly rawG: number;
  readonly additions: readonly Addition[];
}

/** Beyond this the mix no longer fits any kitchen's plan: throw it out, or ask. Common practice, no source. */
const MOST_FACTOR = 6;

/**
 * What to add of everything else so that the proportions are right again. Common practice, no source.
 * @param overFactor how many times the amount meant went in; 2 is doubled.
 * @param madeFactor the batch being made, in recipe yields.
 * @throws Problem `not_possible` when it is not too much, or too much to follow.
 * @example rescueOveradded(bar, foods, 'table-salt', 2, 1).pieces // twice the yield
 */
export function rescueOveradded(
  recipe: Recipe,
  foods: ReadonlyMap<string, Food>,
  foodId: string,
  overFactor: number,
  madeFactor: number,
): Rescue {
  if (!(overFactor > 1 && overFactor <= MOST_FACTOR)) {
    throw new Problem(
      'not_possible',
      overFactor > MOST_FACTOR
        ? `Making the rest match would take ${Math.round(overFactor)} batches.`
        : 'That is not more than the recipe takes.',
      'Say how much went in, for example "put in 2 cups oats instead of 1", or start the mix again.',
    );
  }
  const table = recipeTable(recipe, foods);
  const share = madeFactor * (overFactor - 1);
  const additions = table.lines
    .filter(({ line }) => line.foodId !== foodId)
    .map(({ line, food, ways }) => ({ food, measure: measureBy(ways, line.massG * share, LINE_TOLERANCE) }));
  const factor = overFactor * madeFactor;
  return {
    factor: overFactor,
    pieces: Math.floor(recipe.yieldPieces * factor + 1e-9),
    rawG: table.rawG * factor,
    additions,
  };
}
