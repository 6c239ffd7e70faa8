import type { Book } from '../nutrition/book.ts';
import type { Recipe } from '../nutrition/recipe.ts';
import type { Answered, Asked } from './command.ts';
import type { Intent } from './slots.ts';
import { unknownRecipe } from './unknown-recipe.ts';

/** The recipe a request names, else the one this conversation is about. Throws `unknown_recipe`. */
export async function recipeMeant(asked: Asked): Promise<Recipe | undefined> {
  const { book } = asked.kitchen;
  const said = asked.slots.recipe;
  if (typeof said === 'string') {
    const recipe = book.recipes.get(said) ?? titled(book, said);
    if (!recipe) throw await unknownRecipe(book, said);
    return recipe;
  }
  return asked.conversation.recipeId === undefined
    ? undefined
    : book.recipes.get(asked.conversation.recipeId);
}

const titled = (book: Book, words: string): Recipe | undefined =>
  [...book.recipes.values()].find((recipe) =>
    [recipe.title, ...recipe.aliases].some((name) => name.toLowerCase() === words.toLowerCase()),
  );

/** One short question, with the recipes it may be about. */
export function askWhichRecipe(asked: Asked, intent: Intent, title: string): Answered {
  const recipes = [...asked.kitchen.book.recipes.values()];
  return {
    answer: {
      title,
      sections: [{ kind: 'list', heading: 'This kitchen has', items: recipes.map((r) => r.title) }],
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
