import MiniSearch from 'minisearch';
import type { Food } from './food.ts';
import type { FoodFinder } from './ingredient-list/food-finder.ts';
import { nameKey } from './name-key.ts';

/**
 * An index over the names, ids and aliases of foods; likeness is only looked at by `nearest`.
 * @example createFoodIndex(foods.values()).find('PB')?.id // 'peanut-butter'
 */
export function createFoodIndex(foods: Iterable<Food>): FoodFinder {
  const all = [...foods];
  const byName = new Map<string, Food>();
  for (const food of all) for (const alias of food.aliases) byName.set(nameKey(alias), food);
  // A food's own name outranks another food's alias of the same words.
  for (const food of all) for (const name of [food.id, food.name]) byName.set(nameKey(name), food);
  // Tables write "Greek yogurt, plain, nonfat" where a cook writes "nonfat plain greek yogurt".
  const byWords = new Map<string, Food>();
  for (const [name, food] of byName) byWords.set(inAnyOrder(name), byName.get(inAnyOrder(name)) ?? food);
  let index: MiniSearch | undefined;
  return {
    find(words) {
      const key = nameKey(words);
      return byName.get(key) ?? byWords.get(inAnyOrder(key));
    },
    nearest(words, most) {
      index ??= searchIndex(all);
      return index
        .search(nameKey(words))
        .slice(0, most)
        .flatMap(({ id }) => all[Number(id)] ?? []);
    },
  };
}

const inAnyOrder = (key: string): string => key.split(' ').sort().join(' ');

function searchIndex(foods: readonly Food[]): MiniSearch {
  const index = new MiniSearch({
    fields: ['name', 'aliases'],
    searchOptions: { fuzzy: 0.3, prefix: true, boost: { name: 2 } },
  });
  index.addAll(
    foods.map((food, id) => ({ id, name: nameKey(food.name), aliases: food.aliases.map(nameKey).join(' ') })),
  );
  return index;
}
