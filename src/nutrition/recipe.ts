import type { Role } from './food.ts';

/** How an ingredient is measured at the bench; each way has its own tolerance. */
export type MeasuredBy = 'weighed' | 'levelled' | 'scooped' | 'counted' | 'label';

export interface RecipeLine {
  readonly foodId: string;
  /** Amount as written: exact ratio `numerator / denominator` of `unit`. */
  readonly amount: { readonly numerator: number; readonly denominator: number };
  readonly unit: string;
  /** The words in the recipe file, for people. */
  readonly written: string;
  /** Grams of the whole line for one recipe yield, by the food's own portion. */
  readonly massG: number;
  readonly role: Role;
  readonly measuredBy: MeasuredBy;
  /** Relative tolerance of this measure, 0.05 is 5 %; absent means the default of `measuredBy`. */
  readonly tolerance?: number;
  readonly prep?: string;
  readonly optional: boolean;
}

export interface MethodStep {
  readonly text: string;
  /** A critical control point: what is watched and its limit. */
  readonly control?: { readonly watch: string; readonly limit: string };
}

export type StorageClass = 'refrigerated' | 'frozen' | 'room';

export const RECIPE_KINDS = [
  'no_bake_bar',
  'baked_bar',
  'bites',
  'overnight_oats',
  'parfait',
  'trail_mix',
  'smoothie',
  'roll',
  'breakfast',
  'muffin',
  'other',
] as const;
export type RecipeKind = (typeof RECIPE_KINDS)[number];

/** A rectangular pan, inside measures in inches. */
export interface Pan {
  readonly id: string;
  readonly name: string;
  readonly lengthIn: number;
  readonly widthIn: number;
  readonly depthIn: number;
}

/** A standardized recipe: one true version with its yield, measures, method and holding rules. */
export interface Recipe {
  readonly id: string;
  readonly title: string;
  readonly aliases: readonly string[];
  readonly kind: RecipeKind;
  /** Calendar date of this version, YYYY-MM-DD; '' when the card gives none. */
  readonly version: string;
  readonly yieldPieces: number;
  /** One word for a piece: bar, bite, cup, jar, serving, muffin, roll. */
  readonly pieceUnit: string;
  /** What one piece is, for people: "2 x 2 2/3 in, about 3/4 in thick". */
  readonly piece?: string;
  readonly lines: readonly RecipeLine[];
  /** Share of the raw mass lost in the oven, 0 for no-bake. */
  readonly moistureLoss: number;
  /** Share of mass that stays in the bowl and on the trimmings. */
  readonly handlingLoss: number;
  readonly steps: readonly MethodStep[];
  /** Grams of mix the kitchen's bowl or mixer takes for this dough. */
  readonly bowlG?: number;
  /** The pan one recipe yield fills; absent for cups, bites, smoothies. */
  readonly pan?: Pan;
  /** Rows by columns the pan is cut into for `yieldPieces`. */
  readonly cut?: { readonly rows: number; readonly columns: number };
  readonly set?: { readonly leastMin: number; readonly betterMin: number };
  readonly storage: StorageClass;
  /** Days including the day made; the Food Code's ceiling of 7 applies on top for refrigerated food. */
  readonly shelfLifeDays: number;
  /** Grams of wet over grams of dry in which the mix holds together. */
  readonly wetDry?: { readonly least: number; readonly most: number };
  readonly tags: readonly string[];
  readonly note?: string;
}
