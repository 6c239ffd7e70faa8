import type { AllergenMark, GlutenStatus, LactoseStatus } from './allergens.ts';
import type { Nutrients } from './nutrients.ts';

/** The work a food does in a mix; swaps are found by role and matched on what the role does. */
export const ROLES = [
  'dry_base',
  'binder',
  'liquid',
  'protein',
  'sweetener',
  'fat',
  'color',
  'crunch',
  'leavening',
  'flavor',
] as const;
export type Role = (typeof ROLES)[number];

export type Storage = 'dry' | 'cold' | 'cold_once_opened' | 'frozen';

/** Where the figures of a food come from, in words an answer can repeat. */
export type FoodSource =
  | {
      readonly kind: 'usda_sr28';
      readonly ndbNo: string;
      readonly fdcId?: string;
      readonly description: string;
    }
  | { readonly kind: 'label'; readonly note: string }
  | { readonly kind: 'estimate'; readonly note: string };

/** One household measure of one food: `massG` grams are in ONE `unit` (USDA's "2 tbsp = 32 g" is stored as 16). */
export interface Portion {
  /** A known unit id (`cup`, `tbsp`…) or the food's own word (`medium`, `stick`, `slice`, `scoop`, `packet`). */
  readonly unit: string;
  /** How it was prepared or packed when measured: `sliced`, `packed`. */
  readonly qualifier?: string;
  readonly massG: number;
  /** Not from the food's source but weighed or assumed by the kitchen: less sure than the others. */
  readonly estimated?: true;
}

/**
 * A food as the kitchen knows it, figures per 100 g edible portion.
 * Unknown figures are absent; `contains` is complete as far as the source states it.
 */
export interface Food {
  readonly id: string;
  readonly name: string;
  readonly aliases: readonly string[];
  readonly group: string;
  readonly source: FoodSource;
  readonly per100g: Nutrients;
  /** The food's own Atwater factors, kcal per g (USDA Handbook 74), where known. */
  readonly energyFactors?: { readonly protein: number; readonly fat: number; readonly carbohydrate: number };
  readonly portions: readonly Portion[];
  readonly contains: readonly AllergenMark[];
  /** "May contain" or "shared facility" statements on the package. */
  readonly advisory: readonly AllergenMark[];
  /**
   * Whether the allergens come from a package label (then what is not listed is not in it, as far as labels go)
   * or only from what kind of food it is (then a label still has to be read).
   */
  readonly allergenBasis: 'label' | 'kind';
  readonly gluten: GlutenStatus;
  readonly lactose: LactoseStatus;
  readonly vegan: boolean;
  readonly vegetarian: boolean;
  readonly meat: boolean;
  readonly pork: boolean;
  readonly roles: readonly Role[];
  readonly storage: Storage;
  /** What a careful person must know before using it: highly refined oil, raw flour, honey and infants. */
  readonly note?: string;
  /** Present when this food is a package on the shelf. */
  readonly product?: ProductLabel;
  /** Price of the package or of a purchase unit, for cost. */
  readonly price?: PackagePrice;
}

export interface PackagePrice {
  readonly priceCents: number;
  readonly packageG: number;
  /** How it is bought: "50 lb bag", "12 x 16 oz jar". */
  readonly packageName: string;
  /** Section of the shop. */
  readonly section: string;
}

/** A package label as printed: figures are per serving and rounded by 21 CFR 101.9(c), so each is a range. */
export interface ProductLabel {
  readonly servingG: number;
  readonly servingName: string;
  readonly perServing: Nutrients;
  readonly ingredientsStatement: string;
  readonly allergenStatement?: string;
  readonly advisoryStatement?: string;
  readonly lots: readonly ProductLot[];
  /** Approved for athletes by the dietitian; protein powders are used only when approved. */
  readonly approvedByDietitian: boolean;
  readonly proteinSource?: 'whey' | 'soy' | 'pea' | 'egg_white' | 'casein' | 'rice';
  readonly flavor?: string;
}

export interface ProductLot {
  readonly lot: string;
  /** This lot was batch-tested by a third party for banned substances. Lowers risk, promises nothing. */
  readonly batchTested: boolean;
  /** Calendar date YYYY-MM-DD printed by the maker. */
  readonly useBy?: string;
}
