import type { Book } from '../nutrition/book.ts';
import type { Food } from '../nutrition/food.ts';
import { nameKey } from '../nutrition/name-key.ts';

/**
 * The package this kitchen buys of a plain food: the one product that has "kitchen" before a name of the food among its
 * aliases. `undefined` for a product, and where there is none or more than one.
 * @example ownProduct(book, turkeyBreast)?.name // 'Kitchen turkey slices', by its alias "kitchen turkey"
 */
export function ownProduct(book: Book, food: Food): Food | undefined {
  if (food.product) return undefined;
  const names = new Set([food.name, food.id, ...food.aliases].map((name) => `kitchen ${nameKey(name)}`));
  const own = [...book.foods.values()].filter(
    ({ product, aliases }) => product && aliases.some((alias) => names.has(nameKey(alias))),
  );
  return own.length === 1 ? own[0] : undefined;
}
