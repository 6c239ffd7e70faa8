import type { Verdict } from './conflict.ts';
import type { Food } from './food.ts';
import { isPlain } from './food-nature.ts';
import { nameKey } from './name-key.ts';

const namesOf = new WeakMap<Food, ReadonlySet<string>>();

/** Every word a food is known by or its label lists. */
function wordsOf(food: Food): ReadonlySet<string> {
  const known = namesOf.get(food);
  if (known) return known;
  const texts = [food.name, ...food.aliases, food.product?.ingredientsStatement ?? ''];
  const words = new Set(texts.flatMap((text) => nameKey(text).split(' ')));
  namesOf.set(food, words);
  return words;
}

const names = (food: Food, words: string): boolean => {
  const keys = nameKey(words).split(' ');
  const known = wordsOf(food);
  return keys.every((key) => known.has(key));
};

/**
 * How a food stands to something avoided that is on no list of allergens, by its names and its label: a food made of
 * several things whose label has not been read has to be asked about.
 * @example judgeAvoidedFood(kiwiFruitRaw, 'kiwi') // 'conflict'
 */
export function judgeAvoidedFood(food: Food, words: string): Verdict {
  if (names(food, words)) return 'conflict';
  return food.allergenBasis === 'kind' && !isPlain(food) ? 'ask' : 'clear_by_label';
}

/** Whether any food of the kitchen goes by these words; of others nothing can be checked. */
export function isKnownAvoidedFood(foods: Iterable<Food>, words: string): boolean {
  for (const food of foods) if (names(food, words)) return true;
  return false;
}
