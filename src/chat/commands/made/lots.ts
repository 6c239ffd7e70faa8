import type { NewBatch } from '../../../kitchen/stock/record-made.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import type { Asked } from '../../command.ts';

/**
 * The maker's lot that went in, with the food it is of: the one named, else the one whose label lists that lot. `lot_of` names
 * it where `ingredient` is already what was used instead.
 * @throws Problem `needs_more` when nobody can tell whose lot it is.
 */
export function lotsSaid(asked: Asked, recipe: Recipe): NewBatch['lots'] {
  const { lot, ingredient, lot_of: whose = ingredient } = asked.slots;
  if (typeof lot !== 'string') return [];
  const { foods } = asked.kitchen.book;
  const onCard = recipe.lines.flatMap((line) => foods.get(line.foodId) ?? []);
  const named = onCard.filter((food) => food.id === whose);
  const listing = onCard.filter((food) =>
    food.product?.lots.some((each) => each.lot.toLowerCase() === lot.toLowerCase()),
  );
  const [food] = named.length > 0 ? named : listing;
  if (food) return [{ foodId: food.id, lot }];
  throw new Problem(
    'needs_more',
    `Whose lot is ${lot}? No product in ${recipe.title.toLowerCase()} lists it.`,
    `Name the ingredient, like "made 40 ${recipe.title.toLowerCase()} with lot ${lot} of ${onCard[0]?.name ?? 'vanilla whey'}".`,
  );
}

/** What a dietitian would want to hear about a lot: not approved, or not on the label's list of lots. */
export function lotCautions(asked: Asked, lots: NewBatch['lots']): string[] {
  return lots.flatMap(({ foodId, lot }) => {
    const food = asked.kitchen.book.foods.get(foodId);
    if (!food?.product) return [];
    const known = food.product.lots.find((each) => each.lot.toLowerCase() === lot.toLowerCase());
    if (food.product.proteinSource === undefined) return [];
    if (!food.product.approvedByDietitian)
      return [`${food.name} is not approved by the dietitian: ask before serving.`];
    if (!known) return [`Lot ${lot} is not on this kitchen's list for ${food.name}: tell the dietitian.`];
    return known.batchTested ? [] : [`Lot ${lot} of ${food.name} was not batch-tested: tell the dietitian.`];
  });
}
