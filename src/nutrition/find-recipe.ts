import MiniSearch from 'minisearch';
import { nameKey } from './name-key.ts';
import type { Recipe } from './recipe.ts';

/** What the words of a person come to: one recipe, several that fit alike, or none. */
export type RecipeMatch =
  | { readonly kind: 'found'; readonly recipe: Recipe }
  | { readonly kind: 'ambiguous'; readonly recipes: readonly Recipe[] }
  | { readonly kind: 'unknown' };

export interface RecipeIndex {
  /** The recipe a person means. Exact names win; then the only one that holds all the words; then a misspelling. */
  find(words: string): RecipeMatch;
  /** The recipes whose names are most like the words, best first; never more than `most`. */
  nearest(words: string, most: number): readonly Recipe[];
  /** Every name a recipe answers to as the index keys it, with the recipe's id when only one answers to it. */
  names(): ReadonlyMap<string, string | undefined>;
}

const LONGEST_WORDS = 100;
/** A misspelling is taken as meant only when the runner-up scores well below. */
const CLEAR_LEAD = 1.5;
const UNKNOWN: RecipeMatch = { kind: 'unknown' };

/**
 * Indexes recipes by id, title and aliases.
 * @example createRecipeIndex(recipes).find('Bars') // { kind: 'found', recipe: oat bars }
 */
export function createRecipeIndex(recipes: Iterable<Recipe>): RecipeIndex {
  const all = [...recipes];
  const byName = nameTable(all);
  const tokenSets = new Map<Recipe, ReadonlySet<string>>(
    all.map((recipe) => [recipe, new Set(namesOf(recipe).flatMap((name) => nameKey(name).split(' ')))]),
  );
  let fuzzy: MiniSearch | undefined;
  const search = (words: string) => {
    fuzzy ??= fuzzyIndex(all);
    return fuzzy.search(nameKey(words.slice(0, LONGEST_WORDS)));
  };
  const recipeAt = (id: unknown): Recipe[] => {
    const recipe = all[Number(id)];
    return recipe ? [recipe] : [];
  };

  return {
    find(words) {
      const key = nameKey(words.slice(0, LONGEST_WORDS));
      if (key === '') return UNKNOWN;
      const exact = byName.get(key);
      if (exact) return matchOf(exact);
      const tokens = key.split(' ');
      const holding = all.filter((recipe) => tokens.every((token) => tokenSets.get(recipe)?.has(token)));
      if (holding.length > 0) return matchOf(holding);
      const [best, second] = search(words);
      if (!best || (best.queryTerms.length < tokens.length && tokens.length > 1)) return UNKNOWN;
      const isClear = !second || best.score >= second.score * CLEAR_LEAD;
      return matchOf(isClear ? recipeAt(best.id) : [...recipeAt(best.id), ...recipeAt(second.id)]);
    },
    nearest(words, most) {
      return search(words)
        .slice(0, most)
        .flatMap(({ id }) => recipeAt(id));
    },
    names: () =>
      new Map(
        [...byName].map(([name, [first, ...others]]) => [name, others.length > 0 ? undefined : first?.id]),
      ),
  };
}

const namesOf = (recipe: Recipe): string[] => [recipe.id, recipe.title, ...recipe.aliases];

function nameTable(recipes: readonly Recipe[]): Map<string, Recipe[]> {
  const table = new Map<string, Recipe[]>();
  for (const recipe of recipes) {
    for (const key of new Set(namesOf(recipe).map(nameKey))) {
      if (key !== '') table.set(key, [...(table.get(key) ?? []), recipe]);
    }
  }
  // A recipe's own title outranks another recipe's alias of the same words.
  for (const [key, found] of table) {
    const own = found.filter((recipe) => nameKey(recipe.title) === key || nameKey(recipe.id) === key);
    if (own.length > 0) table.set(key, own);
  }
  return table;
}

const matchOf = (recipes: readonly Recipe[]): RecipeMatch => {
  const [recipe, ...others] = recipes;
  if (!recipe) return UNKNOWN;
  return others.length === 0 ? { kind: 'found', recipe } : { kind: 'ambiguous', recipes };
};

function fuzzyIndex(recipes: readonly Recipe[]): MiniSearch {
  const index = new MiniSearch({
    fields: ['title', 'names'],
    searchOptions: { fuzzy: 0.25, prefix: true, boost: { title: 2 }, combineWith: 'OR' },
  });
  index.addAll(
    recipes.map((recipe, id) => ({
      id,
      title: nameKey(recipe.title),
      names: recipe.aliases.map(nameKey).join(' '),
    })),
  );
  return index;
}
