import type { Need } from './allergens.ts';
import { judgeAvoidedFood } from './avoided-food.ts';
import { conflictsWith, type Verdict } from './conflict.ts';
import type { Food } from './food.ts';
import type { Recipe } from './recipe.ts';
import { recipeAmounts } from './recipe-totals.ts';

const GRAVITY: readonly Verdict[] = ['clear_by_label', 'ask', 'advisory', 'conflict'];

/** The gravest verdict of any ingredient of a recipe for any of the needs, and for foods avoided beyond them. */
export function recipeVerdict(
  recipe: Recipe,
  foods: ReadonlyMap<string, Food>,
  needs: readonly Need[],
  avoidedFoods: readonly string[] = [],
): Verdict {
  let worst = 0;
  for (const { food } of recipeAmounts(recipe, foods)) {
    for (const need of needs) worst = Math.max(worst, GRAVITY.indexOf(conflictsWith(food, need)));
    for (const words of avoidedFoods) worst = Math.max(worst, GRAVITY.indexOf(judgeAvoidedFood(food, words)));
  }
  return GRAVITY[worst] ?? 'ask';
}

/** Recipes in which nothing speaks against the needs, by labels and kinds; the kitchen itself is not checked. */
export function recipesMeeting(
  recipes: ReadonlyMap<string, Recipe>,
  foods: ReadonlyMap<string, Food>,
  needs: readonly Need[],
  avoidedFoods: readonly string[] = [],
): Recipe[] {
  return [...recipes.values()].filter(
    (r) => recipeVerdict(r, foods, needs, avoidedFoods) === 'clear_by_label',
  );
}
