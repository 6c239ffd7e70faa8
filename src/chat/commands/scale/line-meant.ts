import type { Food } from '../../../nutrition/food.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';

const plain = (words: string): string =>
  words
    .toLowerCase()
    .replace(/[^a-z0-9%]+/g, ' ')
    .trim();

/** The food of this recipe an ingredient slot means: by id, by name or alias, by a part of it, or by its role. */
export function foodInRecipe(
  recipe: Recipe,
  foods: ReadonlyMap<string, Food>,
  words: string,
): Food | undefined {
  const used = recipe.lines.flatMap((line) => foods.get(line.foodId) ?? []);
  const said = plain(words);
  const called = (test: (name: string) => boolean) =>
    used.find((food) => [food.id, food.name, ...food.aliases].some((name) => test(plain(name))));
  const named = foods.get(words)?.name;
  return (
    used.find((food) => food.id === words) ??
    called((name) => name === said) ??
    called((name) => name.includes(said) || (said.length > 3 && said.includes(name))) ??
    (named === undefined || plain(named) === said ? undefined : foodInRecipe(recipe, foods, named)) ??
    byRole(recipe, foods, said)
  );
}

/** "powder" in a recipe with one protein powder. */
function byRole(recipe: Recipe, foods: ReadonlyMap<string, Food>, said: string): Food | undefined {
  const role = /\b(?:powder|protein|scoops?)\b/.test(said)
    ? 'protein'
    : /\bmilk\b/.test(said)
      ? 'liquid'
      : undefined;
  const lines = recipe.lines.filter((line) => line.role === role);
  return role && lines.length === 1 ? foods.get(lines[0]?.foodId ?? '') : undefined;
}
