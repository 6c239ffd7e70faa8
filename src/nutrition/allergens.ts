/** The nine US major food allergens: FD&C Act 201(qq), FALCPA 2004, FASTER Act 2021. */
export const US_MAJOR_ALLERGENS = [
  'milk',
  'egg',
  'fish',
  'shellfish',
  'tree_nut',
  'wheat',
  'peanut',
  'soy',
  'sesame',
] as const;

/** What Regulation (EU) 1169/2011 Annex II lists beyond the US nine; gluten cereals there include oats. */
export const EU_ONLY_ALLERGENS = [
  'gluten_cereal',
  'celery',
  'mustard',
  'lupin',
  'mollusc',
  'sulphites',
] as const;

/** Not on either list, yet people avoid them and labels name them: asked about, never promised. */
export const UNLISTED_CONCERNS = ['coconut', 'chestnut', 'sunflower', 'pumpkin_seed'] as const;

export type Allergen =
  | (typeof US_MAJOR_ALLERGENS)[number]
  | (typeof EU_ONLY_ALLERGENS)[number]
  | (typeof UNLISTED_CONCERNS)[number];

/** An allergen with its species where the law wants it named (tree nut: almond; fish: salmon). */
export interface AllergenMark {
  readonly allergen: Allergen;
  readonly species?: string;
}

/** What a person may ask a recipe to be free of. "nut free" is `peanut` and `tree_nut` together. */
export const NEEDS = [
  'peanut',
  'tree_nut',
  'milk',
  'egg',
  'wheat',
  'gluten',
  'soy',
  'sesame',
  'fish',
  'shellfish',
  'lactose',
  'animal',
  'meat',
  'pork',
  'added_sugar',
  'celery',
  'mustard',
  'lupin',
  'mollusc',
  'sulphites',
  'coconut',
] as const;
export type Need = (typeof NEEDS)[number];

export type GlutenStatus = 'contains' | 'labelled_gluten_free' | 'no_gluten_grain';
export type LactoseStatus = 'contains' | 'low' | 'none';
