import type { Food } from '../../../nutrition/food.ts';
import { isPlain } from '../../../nutrition/food-nature.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { recipeFoods } from '../../../nutrition/swap/offer.ts';
import type { Asked } from '../../command.ts';
import { listed } from '../../need-words.ts';

/** Whether a recipe has an ingredient somebody avoids that is on no list of allergens: "allergic to banana". */
export function ingredientLine(asked: Asked, recipe: Recipe, avoided: Food): string {
  const foods = recipeFoods(recipe, asked.kitchen.book.foods);
  const holding = foods.filter((food) => food.id === avoided.id || isSameKind(food, avoided));
  if (holding.length > 0)
    return `${recipe.title} has ${listed([...new Set(holding.map((f) => f.name))])} in it.`;
  const mixed = [...new Set(foods.filter((food) => !isPlain(food)).map((food) => food.name))];
  const unread = mixed.length > 0 ? ` Read for it: ${listed(mixed)}.` : '';
  return `${recipe.title}: no ${headOf(avoided)} among its ingredients by name.${unread}`;
}

/** The recipes that have it, for somebody who named nothing but what they avoid. */
export function recipesWith(asked: Asked, avoided: Food): string {
  const { recipes, foods } = asked.kitchen.book;
  const holding = [...recipes.values()].filter((recipe) =>
    recipeFoods(recipe, foods).some((food) => food.id === avoided.id || isSameKind(food, avoided)),
  );
  const name = headOf(avoided);
  return holding.length > 0
    ? `${capital(name)}: in ${holding.length} of ${recipes.size} recipes: ${listed(holding.map((r) => r.title))}. Packages are not checked for it.`
    : `No recipe here names ${name} as an ingredient; packages are not checked for it.`;
}

/** "Strawberries" of "Strawberries, frozen": the same thing in another state. */
const headOf = (food: Food): string => (food.name.split(',')[0] ?? food.name).toLowerCase();

const stems = (words: string): string[] =>
  (words.toLowerCase().match(/\p{L}{3,}/gu) ?? []).map((word) => word.replace(/(?:ies|es|s)$/, ''));

function isSameKind(food: Food, avoided: Food): boolean {
  const has = new Set(stems([food.name, ...food.aliases].join(' ')));
  const wanted = stems(headOf(avoided));
  return wanted.length > 0 && wanted.every((word) => has.has(word));
}

const capital = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
