import type { Food } from '../food.ts';
import type { NutrientKey } from '../nutrients.ts';
import type { Recipe } from '../recipe.ts';

/** What can be held for one piece. Shares are 0 to 1 on a 4-4-9 basis; cost is in cents; mass is as eaten, grams. */
export type Measure =
  | { readonly kind: 'nutrient'; readonly key: NutrientKey }
  | { readonly kind: 'energy_share'; readonly of: 'protein' | 'carbohydrate' | 'fat' }
  | { readonly kind: 'cost' }
  | { readonly kind: 'wet_dry' }
  | { readonly kind: 'piece_mass' };

/** One bound on one measure. */
export interface Limit {
  readonly measure: Measure;
  readonly bound: 'least' | 'most';
  readonly amount: number;
  /** Nutrients only: must hold at the far end of what cups and spoons leave open, not only on the figure. */
  readonly evenIfScooped?: true;
  /** Who wants it: the person, or the recipe's own texture range. Only what was asked for may give way. */
  readonly from: 'asked' | 'texture';
}

/** What may be done with one ingredient, in grams of the whole mix. */
export interface FoodLimit {
  readonly foodId: string;
  readonly leastG?: number;
  readonly mostG?: number;
  /** Left as the recipe has it. */
  readonly fixed?: true;
  /** Only whole multiples of so many grams: packages, scoops. */
  readonly wholeG?: number;
  /** What a package of the multiples is called, and how many of it one multiple is: half a jar when it is shared by two mixes. */
  readonly package?: { readonly word: string; readonly each: number };
}

export interface BalanceQuestion {
  readonly recipe: Recipe;
  readonly foods: ReadonlyMap<string, Food>;
  /** Pieces of the one mix that is measured out; may be a fraction when a batch is made in several mixes. */
  readonly pieces: number;
  readonly limits: readonly Limit[];
  readonly foodLimits?: readonly FoodLimit[];
}

/** Without a word from the person no ingredient goes below half or above twice the recipe's amount. */
export const USUAL_RANGE = { least: 0.5, most: 2 } as const;

/** More lines than any recipe has: beyond it something was pasted by mistake. */
export const MOST_LINES = 200;
