import type { Food } from './food.ts';
import type { FoodAmount } from './totals.ts';

/** A mix after something was added or left out, and what the leaving out did not find. */
export interface ChangedMix<Amount extends FoodAmount> {
  readonly amounts: readonly Amount[];
  readonly removed: readonly Amount[];
  /** Foods asked to be left out that were not in the mix. */
  readonly notThere: readonly Food[];
}

/**
 * A mix with foods left out (every line of the food) and others put in, nothing else changed.
 * Example: leaving peanut butter out of oats + peanut butter leaves oats; leaving out honey reports it not there.
 */
export function changedMix<Amount extends FoodAmount>(
  amounts: readonly Amount[],
  changes: { readonly add?: readonly Amount[]; readonly remove?: readonly Food[] },
): ChangedMix<Amount> {
  const out = new Set((changes.remove ?? []).map((food) => food.id));
  const kept = amounts.filter((amount) => !out.has(amount.food.id));
  const there = new Set(amounts.map((amount) => amount.food.id));
  return {
    amounts: [...kept, ...(changes.add ?? [])],
    removed: amounts.filter((amount) => out.has(amount.food.id)),
    notThere: (changes.remove ?? []).filter((food) => !there.has(food.id)),
  };
}
