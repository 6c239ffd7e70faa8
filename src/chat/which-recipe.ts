import type { Recipe } from '../nutrition/recipe.ts';
import type { Answered, Asked } from './command.ts';
import { findersOf } from './commands/macros/finders.ts';
import type { Intent } from './slots.ts';
import { unknownRecipe } from './unknown-recipe.ts';

/**
 * The recipe a request names, else the one this conversation is about; several when the words fit alike.
 * Throws `unknown_recipe`.
 */
export async function recipesMeant(asked: Asked): Promise<Recipe | readonly Recipe[] | undefined> {
  const { book } = asked.kitchen;
  const said = asked.slots.recipe;
  if (typeof said !== 'string') return book.recipes.get(asked.conversation.recipeId ?? '');
  const known = book.recipes.get(said);
  if (known) return known;
  const match = findersOf(book).recipes.find(said);
  if (match.kind === 'unknown') throw await unknownRecipe(book, said);
  return match.kind === 'found' ? match.recipe : match.recipes;
}

/** The recipe of exactly that name, else the one this conversation is about. Throws `unknown_recipe`. */
export async function recipeMeant(asked: Asked): Promise<Recipe | undefined> {
  const { book } = asked.kitchen;
  const said = asked.slots.recipe;
  if (typeof said !== 'string') return book.recipes.get(asked.conversation.recipeId ?? '');
  const names = (recipe: Recipe) => [recipe.id, recipe.title, ...recipe.aliases];
  const recipe = [...book.recipes.values()].find((r) =>
    names(r).some((name) => name.toLowerCase() === said.toLowerCase()),
  );
  if (!recipe) throw await unknownRecipe(book, said);
  return recipe;
}

/** Whether the words fitted more than one recipe. */
export const isSeveral = (meant: Recipe | readonly Recipe[] | undefined): meant is readonly Recipe[] =>
  Array.isArray(meant);

/** One short question, with the recipes it may be about. */
export function askWhichRecipe(
  asked: Asked,
  intent: Intent,
  title: string,
  recipes: readonly Recipe[] = [...asked.kitchen.book.recipes.values()],
): Answered {
  return {
    answer: {
      title,
      sections: [{ kind: 'list', items: recipes.map((r) => r.title) }],
      cautions: [],
      next: recipes.slice(0, 3).map((r) => ({ label: r.title, says: r.title })),
      audience: 'asker',
      data: { asks: 'recipe' },
    },
    conversation: {
      ...asked.conversation,
      question: {
        slot: 'recipe',
        options: recipes.map((r) => r.id),
        reading: { intent, slots: asked.slots },
      },
    },
  };
}
