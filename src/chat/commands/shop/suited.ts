import { Problem } from '../../../nutrition/problem.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { findSwaps } from '../../../nutrition/swap/find-swaps.ts';
import type { Asked } from '../../command.ts';
import { listed, needName, needsOf } from '../../need-words.ts';
import type { Slots } from '../../slots.ts';
import { lineText } from '../swap/offer-text.ts';

/**
 * The card with the swaps that needs ask for: nobody buys peanut butter for nut-free bars.
 * @throws Problem `not_possible` when no swap does.
 */
export function suited(
  { kitchen }: Asked,
  recipe: Recipe,
  slots: Slots,
): { readonly card: Recipe; readonly notes: readonly string[] } {
  const needs = needsOf(slots.avoid);
  if (needs.length === 0) return { card: recipe, notes: [] };
  const { foods, recipes, settings } = kitchen.book;
  const found = findSwaps({ recipe, foods, recipes, needs, list: settings.allergenList });
  const free = listed(needs.map(needName), 'or');
  const [best] = found.offers;
  if (best) {
    const swaps = listed(best.swaps.map(lineText));
    return {
      card: best.recipe,
      notes: [`No ${free}: in a batch of ${recipe.yieldPieces}, ${swaps}. Read every package in use.`],
    };
  }
  if (found.nothingToSwap) {
    return {
      card: recipe,
      notes: [`No ${free} is listed in ${recipe.title}, by recipe and labels; the kitchen was not checked.`],
    };
  }
  throw new Problem(
    'not_possible',
    `No swap here makes ${recipe.title.toLowerCase()} without ${free}.`,
    `Ask which recipes do, like "${free.split(' ')[0]}-free recipes", and shop for one of those.`,
  );
}
