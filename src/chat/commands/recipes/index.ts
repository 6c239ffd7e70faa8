import type { Recipe } from '../../../nutrition/recipe.ts';
import type { Answered, Asked, Command } from '../../command.ts';
import { needsOf } from '../../need-words.ts';
import { unknownRecipe } from '../../unknown-recipe.ts';
import { forWhom, toldFor } from '../roster/whose.ts';
import { recipeCard } from './card.ts';
import { recipesHead } from './head.ts';
import { recipeList } from './list.ts';

/** The recipes this kitchen has, all or those that serve a need; or one of them as a card. */
export const recipes: Command = {
  ...recipesHead,
  async answers(said) {
    const whom = await forWhom(said);
    return toldFor(await recipesAnswer(whom.asked), whom, said);
  },
};

async function recipesAnswer({ slots, kitchen, conversation }: Asked): Promise<Answered> {
  const { book } = kitchen;
  if (typeof slots.recipe !== 'string') return { answer: recipeList(book, slots) };
  const recipe: Recipe | undefined = book.recipes.get(slots.recipe);
  if (!recipe) throw await unknownRecipe(book, slots.recipe);
  const said = { intent: 'recipes', slots: { ...slots, recipe: recipe.id } } as const;
  return {
    answer: recipeCard(recipe, book, needsOf(slots.avoid)),
    conversation: { ...conversation, last: said, recipeId: recipe.id },
  };
}
