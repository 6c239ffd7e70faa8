import { type AllergenMark, NEEDS, type Need } from '../../nutrition/allergens.ts';
import type { Book } from '../../nutrition/book.ts';
import type { Verdict } from '../../nutrition/conflict.ts';
import type { Food } from '../../nutrition/food.ts';
import { recipeVerdict } from '../../nutrition/meets-needs.ts';
import type { Recipe } from '../../nutrition/recipe.ts';
import { recipeAmounts } from '../../nutrition/recipe-totals.ts';
import { MOST_DAYS } from './date-mark.ts';
import type { BatchFacts } from './ledger.ts';

/**
 * What goes into a batch, as known now. Optional lines count as used: an allergen too many on a label hurts nobody.
 * Throws `unknown_food` when a line's food is missing from the book.
 */
export function batchFacts(book: Book, recipe: Recipe, pieces: number): BatchFacts {
  const factor = pieces / recipe.yieldPieces;
  const foods = recipeAmounts(recipe, book.foods).map(({ food }) => food);
  const keepCold = recipe.storage !== 'room';
  const verdict = (need: Need): Verdict => recipeVerdict(recipe, book.foods, [need]);
  return {
    ingredients: recipe.lines.map((line) => ({
      foodId: line.foodId,
      name: book.foods.get(line.foodId)?.name ?? line.foodId,
      massG: line.massG * factor,
    })),
    contains: marksOf(foods, (food) => food.contains),
    advisory: marksOf(foods, (food) => food.advisory),
    verdicts: Object.fromEntries(NEEDS.map((need) => [need, verdict(need)])) as Record<Need, Verdict>,
    days: keepCold ? Math.min(recipe.shelfLifeDays, book.settings.mostDays, MOST_DAYS) : recipe.shelfLifeDays,
    keepCold,
  };
}

function marksOf(
  foods: readonly Food[],
  pick: (food: Food) => readonly AllergenMark[],
): readonly AllergenMark[] {
  const byName = new Map<string, AllergenMark>();
  for (const mark of foods.flatMap(pick)) byName.set(`${mark.allergen} ${mark.species ?? ''}`, mark);
  return [...byName.values()];
}
