import type { Book } from '../nutrition/book.ts';
import { rawFoods } from '../nutrition/raw-foods.ts';
import type { Recipe } from '../nutrition/recipe.ts';
import { listed } from './need-words.ts';

/** What the recipe as written leaves raw; nothing when a step heats it. */
export function rawCautions(recipe: Recipe, { foods }: Book): string[] {
  const names = rawFoods(recipe, foods).map(({ name }) => name.replace(/, raw$/i, '').toLowerCase());
  if (names.length === 0) return [];
  return [
    `No step of ${recipe.title} cooks the raw ${listed(names)}: use a pasteurized, heat-treated or cooked product, or add the step to the card; serve none otherwise (common practice; your local health code decides).`,
  ];
}
