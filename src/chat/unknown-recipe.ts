import type { Book } from '../nutrition/book.ts';
import { Problem } from '../nutrition/problem.ts';

/** The `unknown_recipe` Problem for words that name no recipe here, with the nearest three in its hint. */
export async function unknownRecipe(book: Book, words: string): Promise<Problem> {
  const { default: MiniSearch } = await import('minisearch');
  const index = new MiniSearch({
    fields: ['title', 'aliases'],
    searchOptions: { prefix: true, fuzzy: 0.3, boost: { title: 2 } },
  });
  const recipes = [...book.recipes.values()];
  index.addAll(recipes.map(({ id, title, aliases }) => ({ id, title, aliases: aliases.join(' ') })));
  const near = index
    .search(words.slice(0, 100))
    .slice(0, 3)
    .map((hit) => book.recipes.get(String(hit.id))?.title);
  const hint = near.length > 0 ? `Did you mean ${near.join(', ')}?` : 'Type "recipes" for the list.';
  return new Problem('unknown_recipe', `This kitchen has no recipe "${words.slice(0, 60)}".`, hint);
}
