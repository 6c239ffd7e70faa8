import type { Need } from '../allergens.ts';
import type { Food } from '../food.ts';
import type { Recipe } from '../recipe.ts';
import { settingOf } from './find-swaps.ts';
import { clearOfChoices, groupsOf } from './rank.ts';
import { needBits, swapTable } from './table.ts';

/**
 * A quick test of which needs a recipe may be made to meet: false only where some ingredient neither meets them nor
 * has anything that could stand in for it. What passes still has to be asked of `findSwaps`.
 */
export function reachOf(
  recipe: Recipe,
  foods: ReadonlyMap<string, Food>,
  recipes: ReadonlyMap<string, Recipe>,
): (needs: readonly Need[]) => boolean {
  const table = swapTable(foods);
  const setting = settingOf(recipe, foods, recipes);
  const clear = groupsOf(recipe, foods, () => true).map((group) => clearOfChoices(group, table, setting));
  return (needs) => {
    const bits = needBits(needs);
    return clear.every((masks) => masks.some((mask) => (mask & bits) === bits));
  };
}
