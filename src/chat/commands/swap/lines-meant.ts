import type { Book } from '../../../nutrition/book.ts';
import type { Food } from '../../../nutrition/food.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { formOf } from '../../../nutrition/swap/form.ts';
import { foodCalled } from '../../find-food.ts';
import { listed } from '../../need-words.ts';

/**
 * The foods of a recipe that a word means: the food of that name, else those whose names hold the word, else those
 * of the same form ("out of milk" where the recipe has 2 % milk, "pb" where it has the chunky one).
 */
export function linesMeant(recipe: Recipe, book: Book, words: string): Food[] {
  const foods = [...new Set(recipe.lines.flatMap((line) => book.foods.get(line.foodId) ?? []))];
  const named = foodCalled(book, words);
  if (named && foods.includes(named)) return [named];
  const tokens = words.toLowerCase().match(/[\p{L}\p{N}%]{2,}/gu) ?? [];
  const holding = foods.filter((food) => tokens.length > 0 && tokens.every((t) => hasWord(food, t)));
  if (holding.length > 0) return holding;
  if (!named || formOf(named) === 'other') return [];
  return foods.filter((food) => formOf(food) === formOf(named));
}

const hasWord = (food: Food, token: string): boolean =>
  [food.id.replaceAll(/[-_]/g, ' '), food.name, ...food.aliases].some((name) =>
    (name.toLowerCase().match(/[\p{L}\p{N}%]+/gu) ?? []).some((word) => stem(word) === stem(token)),
  );

const stem = (word: string): string => word.replace(/(es|s)$/, '');

/** The recipe was named and does not use that ingredient: say what it does use. */
export function requireLines(recipe: Recipe, book: Book, ingredient: string): Problem {
  const names = recipe.lines.flatMap((line) => book.foods.get(line.foodId)?.name ?? []);
  return new Problem(
    'not_found',
    `${recipe.title} has no ${ingredient}.`,
    `It has ${listed(names)}. Name one of these.`,
  );
}
