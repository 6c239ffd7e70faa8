import type { Book } from '../nutrition/book.ts';
import { Problem } from '../nutrition/problem.ts';

/** The `unknown_recipe` Problem for words that name no recipe here, with the nearest three in its hint. */
export async function unknownRecipe(book: Book, words: string): Promise<Problem> {
  const { createRecipeIndex } = await import('../nutrition/find-recipe.ts');
  const near = createRecipeIndex(book.recipes.values()).nearest(words, 3);
  const hint =
    near.length > 0
      ? `Did you mean ${near.map(({ title }) => title).join(', ')}?`
      : 'Type "recipes" for the list.';
  return new Problem('unknown_recipe', `This kitchen has no recipe "${words.slice(0, 60)}".`, hint);
}
