import type { Book } from '../../nutrition/book.ts';
import type { Food } from '../../nutrition/food.ts';
import { Problem } from '../../nutrition/problem.ts';
import type { Recipe } from '../../nutrition/recipe.ts';
import type { BatchOverride } from './ledger.ts';

/** Protein powders are the supplements of this kitchen: what the dietitian approves, or does not. */
export const isUnapproved = ({ product }: Food): boolean =>
  product?.proteinSource !== undefined && !product.approvedByDietitian;

/** The products of a recipe, as it was made, that the dietitian has not approved. */
export const unapprovedIn = (book: Book, recipe: Recipe): readonly Food[] =>
  [...new Set(recipe.lines.map(({ foodId }) => foodId))]
    .flatMap((id) => book.foods.get(id) ?? [])
    .filter(isUnapproved);

/**
 * What is kept with a batch of unapproved products: which they are and why staff let it pass. Nothing when all are approved.
 * @throws Problem `not_possible` when no reason was given.
 */
export function overrideOf(
  book: Book,
  recipe: Recipe,
  reason: string | undefined,
): BatchOverride | undefined {
  const products = unapprovedIn(book, recipe).map(({ name }) => name);
  if (products.length === 0) return undefined;
  if (reason !== undefined) return { products, reason };
  throw new Problem(
    'not_possible',
    `${products.join(' and ')} in ${recipe.title.toLowerCase()}: not approved by the dietitian. Not logged.`,
    `Ask staff before any is served. Staff can log it with a reason that is kept, like "made 20 ${recipe.title.toLowerCase()} override: dietitian approved by phone".`,
  );
}
