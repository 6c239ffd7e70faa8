import MiniSearch from 'minisearch';
import type { Food } from './food.ts';
import type { FoodFinder } from './ingredient-list/food-finder.ts';
import { nameKey } from './name-key.ts';

/** A finder that also tells its whole vocabulary. */
export interface FoodIndex extends FoodFinder {
  /** Every name, id and alias as `nameKey` writes it, with the food's id: what a grammar has to know. */
  readonly names: () => Iterable<readonly [name: string, foodId: string]>;
}

/** No food's name is longer, and likeness over a long text only costs time. */
const MOST_CHARACTERS = 80;

/**
 * An index over the names, ids and aliases of foods; likeness is only looked at by `nearest`.
 * @example createFoodIndex(foods.values()).find('PB')?.id // 'peanut-butter'
 */
export function createFoodIndex(foods: Iterable<Food>): FoodIndex {
  const all = [...foods];
  const byName = new Map<string, Food>();
  for (const food of all) for (const alias of food.aliases) byName.set(nameKey(alias), food);
  // A food's own name outranks another food's alias of the same words.
  for (const food of all) for (const name of [food.id, food.name]) byName.set(nameKey(name), food);
  // Tables write "Greek yogurt, plain, nonfat" where a cook writes "nonfat plain greek yogurt".
  const byWords = new Map<string, Food>();
  for (const [name, food] of byName) byWords.set(inAnyOrder(name), byName.get(inAnyOrder(name)) ?? food);
  const bySense = new Map<string, Food>();
  for (const [name, food] of byName) if (!bySense.has(sameSense(name))) bySense.set(sameSense(name), food);
  let index: MiniSearch | undefined;
  return {
    find(words) {
      const key = nameKey(words);
      return byName.get(key) ?? byWords.get(inAnyOrder(key)) ?? bySense.get(sameSense(key));
    },
    nearest(words, most) {
      if (words.length > MOST_CHARACTERS) return [];
      index ??= searchIndex(all);
      return index
        .search(nameKey(words))
        .slice(0, most)
        .flatMap(({ id }) => all[Number(id)] ?? []);
    },
    *names() {
      for (const [name, { id }] of byName) yield [name, id] as const;
    },
  };
}

/** Two ways to write one word. Common practice, no source. */
const SAME_SENSE: readonly (readonly [RegExp, string])[] = [
  [/\b(?:non fat|fat free|skim)\b/g, 'nonfat'],
  [/\blow fat\b/g, 'lowfat'],
  [/(\d) %/g, '$1%'],
  [/\bnon stick\b/g, 'nonstick'],
  [/\bwholewheat\b/g, 'whole wheat'],
  [/\bhard cooked\b/g, 'hard boiled'],
  [/\bgarbanzo bean\b|\bgarbanzo\b|\bchick pea\b/g, 'chickpea'],
];

/** The key with one spelling for each sense: "non-fat milk", "fat-free milk" and "skim milk" are one. */
const sameSense = (key: string): string =>
  inAnyOrder(SAME_SENSE.reduce((words, [written, sense]) => words.replace(written, sense), key));

const inAnyOrder = (key: string): string => key.split(' ').sort().join(' ');

function searchIndex(foods: readonly Food[]): MiniSearch {
  const index = new MiniSearch({
    fields: ['name', 'aliases'],
    searchOptions: {
      fuzzy: 0.3,
      prefix: true,
      boost: { name: 2 },
      // The plain food before its kinds: peanut butter before peanut butter, crunchy, no salt.
      boostDocument: (id) => 1 / Math.sqrt(foods[Number(id)]?.name.split(' ').length ?? 1),
    },
  });
  index.addAll(
    foods.map((food, id) => ({ id, name: nameKey(food.name), aliases: food.aliases.map(nameKey).join(' ') })),
  );
  return index;
}
