import type { Book } from '../../nutrition/book.ts';
import { Problem } from '../../nutrition/problem.ts';
import type { Recipe } from '../../nutrition/recipe.ts';
import { labelStandings } from './book-as-told.ts';
import type { PantryView } from './pantry.ts';

/**
 * A changed product reopens the allergen check of what uses it.
 * @throws Problem `not_possible` when a label of these recipes changed and staff have not read it.
 */
export async function refuseUnchecked(
  ledger: PantryView,
  book: Book,
  recipes: readonly Recipe[],
): Promise<void> {
  const labels = labelStandings(await ledger.labelNotes());
  for (const recipe of recipes) {
    const open = recipe.lines.find(({ foodId }) => labels.get(foodId)?.isOpen);
    if (!open) continue;
    const name = book.foods.get(open.foodId)?.name ?? open.foodId;
    throw new Problem(
      'not_possible',
      `The label of ${name} changed and nobody has checked it. ${recipe.title}: not logged.`,
      `Staff read the label on the package, then write "checked the label of ${name.toLowerCase()}", with what is new, like "may contain peanut", or "same as before".`,
    );
  }
}
