import type { Variant } from '../../nutrition/cover/variant.ts';
import type { Recipe, RecipeKind } from '../../nutrition/recipe.ts';
import type { Eaters } from './eaters.ts';
import type { ProductionQuestion } from './question.ts';

/** Eaten from the hand on a bus or at a bench: common practice, no source. */
const HANDY: ReadonlySet<RecipeKind> = new Set(['no_bake_bar', 'baked_bar', 'bites', 'trail_mix', 'muffin']);

/**
 * How little a kitchen wants a variant among equally few, 0 to below 1: each swap is something nobody here has made,
 * then comes what the kitchen's usual is, what it keeps a par of or made lately, what people like, what is handy.
 */
export function reluctanceOf(
  question: Pick<ProductionQuestion, 'book' | 'eaters' | 'recipeId' | 'madeLately'>,
): (variant: Variant) => number {
  const liked = likedBy(question.eaters);
  return ({ card, swaps }) => {
    const changed = Math.min(10, swaps.length) * 0.03;
    return (
      changed +
      unknown(card, question) +
      (HANDY.has(card.kind) ? 0 : 0.02) -
      Math.min(0.01, (liked.get(card.id) ?? 0) * 1e-4) +
      0.01
    );
  };
}

function unknown(
  { id }: Recipe,
  { book, recipeId, madeLately }: Pick<ProductionQuestion, 'book' | 'recipeId' | 'madeLately'>,
): number {
  if (id === recipeId || id === book.settings.gameRecipe) return 0;
  return madeLately.has(id) || book.settings.par.has(id) ? 0.02 : 0.04;
}

function likedBy(eaters: readonly Eaters[]): Map<string, number> {
  const liked = new Map<string, number>();
  for (const { likes, people } of eaters)
    for (const id of likes) liked.set(id, (liked.get(id) ?? 0) + people);
  return liked;
}
