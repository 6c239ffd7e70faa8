import { NEEDS, type Need } from '../allergens.ts';
import { isKnownAvoidedFood, judgeAvoidedFood } from '../avoided-food.ts';
import type { Food } from '../food.ts';
import { recipeVerdict } from '../meets-needs.ts';
import type { Recipe } from '../recipe.ts';
import { recipeFoods } from '../swap/offer.ts';

/** What some people avoid, all of them the same. */
export interface Profile {
  readonly avoid: readonly Need[];
  /** Foods avoided beyond the list of needs, in words. */
  readonly foods: readonly string[];
}

/** One text for one profile, in whatever order it was told. */
export const profileKey = ({ avoid, foods }: Profile): string =>
  JSON.stringify([NEEDS.filter((need) => avoid.includes(need)), [...new Set(foods)].sort()]);

/** All that any of them avoids. */
export function unionOf(profiles: readonly Profile[]): Profile {
  return {
    avoid: NEEDS.filter((need) => profiles.some(({ avoid }) => avoid.includes(need))),
    foods: [...new Set(profiles.flatMap(({ foods }) => foods))].sort(),
  };
}

/** Whether whatever suits `wide` suits `narrow` too. */
export const isWithin = (narrow: Profile, wide: Profile): boolean =>
  narrow.avoid.every((need) => wide.avoid.includes(need)) &&
  narrow.foods.every((food) => wide.foods.includes(food));

/** Whether nothing in the recipe speaks against the profile, by labels and kinds; the kitchen itself is not checked. */
export function suits(recipe: Recipe, foods: ReadonlyMap<string, Food>, profile: Profile): boolean {
  if (recipeVerdict(recipe, foods, profile.avoid) !== 'clear_by_label') return false;
  const used = profile.foods.length > 0 ? recipeFoods(recipe, foods) : [];
  return profile.foods.every((word) =>
    used.every((food) => judgeAvoidedFood(food, word) === 'clear_by_label'),
  );
}

/** Whether every food avoided is one this kitchen can look for; a word it does not know could mean anything. */
export const isCheckable = (profile: Profile, foods: ReadonlyMap<string, Food>): boolean =>
  profile.foods.every((word) => isKnownAvoidedFood(foods.values(), word));
