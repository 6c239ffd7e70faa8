import type { AllergenList } from '../allergen-list.ts';
import { judgeAvoidedFood } from '../avoided-food.ts';
import type { Food } from '../food.ts';
import type { Recipe } from '../recipe.ts';
import { findSwaps } from '../swap/find-swaps.ts';
import { type LineSwap, recipeFoods } from '../swap/offer.ts';
import { type Profile, profileKey, suits } from './profile.ts';

/** A recipe as on its card, or with the swaps that make it suit somebody. */
export interface Variant {
  /** The card it is made from. */
  readonly card: Recipe;
  /** The recipe to make: the card, or the card with its swaps. */
  readonly recipe: Recipe;
  readonly swaps: readonly LineSwap[];
}

export interface VariantBook {
  readonly foods: ReadonlyMap<string, Food>;
  readonly recipes: ReadonlyMap<string, Recipe>;
  readonly list: AllergenList;
  /** Whether a swapped card may be made here at all. */
  readonly allows?: (card: Recipe, recipe: Recipe) => boolean;
}

export type VariantFinder = (card: Recipe, profile: Profile) => Variant | undefined;

export const asOnCard = (card: Recipe): Variant => ({ card, recipe: card, swaps: [] });

/** Finds the variant of a card that suits a profile; the same question is worked out once. */
export function variantFinder(book: VariantBook): VariantFinder {
  const known = new Map<string, Variant | undefined>();
  return (card, profile) => {
    const key = `${card.id} ${profileKey(profile)}`;
    if (!known.has(key)) known.set(key, variantFor(card, profile, book));
    return known.get(key);
  };
}

function variantFor(
  card: Recipe,
  profile: Profile,
  { foods, recipes, list, allows = () => true }: VariantBook,
): Variant | undefined {
  if (suits(card, foods, profile)) return asOnCard(card);
  const without = recipeFoods(card, foods).filter((food) =>
    profile.foods.some((word) => judgeAvoidedFood(food, word) !== 'clear_by_label'),
  );
  const { offers } = findSwaps({ recipe: card, foods, recipes, needs: profile.avoid, list, without });
  // The engine judged its offers; what it knows nothing of, foods avoided by name, is judged here with all the rest.
  const offer = offers.find(({ recipe }) => suits(recipe, foods, profile) && allows(card, recipe));
  return offer && { card, recipe: offer.recipe, swaps: offer.swaps };
}
