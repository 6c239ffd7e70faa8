import type { Recipe } from '../../../nutrition/recipe.ts';

const EMPTY_WORDS = new Set([
  'recipe',
  'recipes',
  'all',
  'any',
  'the',
  'a',
  'list',
  'show',
  'me',
  'for',
  'with',
  'and',
  'of',
]);

/** Words that narrow the list, lower case and singular: "no-bake bars" is `no`, `bake`, `bar`. */
export function filterWords(topic: unknown): string[] {
  if (typeof topic !== 'string') return [];
  const words = topic.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  return words.filter((word) => !EMPTY_WORDS.has(word)).map(singular);
}

/** Whether every word is in the recipe's kind, title, other names or tags. */
export function matchesWords(recipe: Recipe, words: readonly string[]): boolean {
  const said = [recipe.kind, recipe.title, ...recipe.aliases, ...recipe.tags].join(' ').toLowerCase();
  const has = new Set((said.match(/[\p{L}\p{N}]+/gu) ?? []).map(singular));
  return words.every((word) => has.has(word));
}

const singular = (word: string): string =>
  word.length > 3 && !word.endsWith('ss') ? word.replace(/s$/, '') : word;
