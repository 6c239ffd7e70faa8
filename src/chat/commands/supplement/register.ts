import type { Book } from '../../../nutrition/book.ts';
import type { Food, ProductLabel } from '../../../nutrition/food.ts';

/** A powder on the shelf with what is on record about it. */
export interface Registered {
  readonly food: Food;
  readonly product: ProductLabel;
}

/** The protein powders among the kitchen's products: what the dietitian approves, or does not. */
export const registerOf = (book: Book): Registered[] =>
  [...book.foods.values()].flatMap((food) =>
    food.product?.proteinSource === undefined ? [] : [{ food, product: food.product }],
  );

/**
 * The products a request may mean: by lot, else all whose names hold every word. One only when the words single it
 * out: "the powder" is nobody's product.
 */
export function productsMeant(
  book: Book,
  words: string | undefined,
  lot: string | undefined,
): readonly Registered[] {
  const register = registerOf(book);
  const named = words === undefined ? [] : byWords(register, words);
  const byLot = register.filter(({ product }) => product.lots.some((each) => each.lot.toUpperCase() === lot));
  return named.length === 1 || byLot.length === 0 ? named : byLot;
}

function byWords(register: readonly Registered[], words: string): readonly Registered[] {
  const exact = register.filter(({ food }) => food.id === words || food.name === words);
  if (exact.length > 0) return exact;
  const tokens = tokensOf(words).filter((token) => token !== 'kitchen');
  if (tokens.length === 0) return [];
  return register.filter(({ food }) => {
    const own = new Set(tokensOf(`${food.name} ${food.group} ${food.product?.flavor ?? ''}`));
    return tokens.every((token) => own.has(token));
  });
}

const tokensOf = (text: string): string[] => text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
