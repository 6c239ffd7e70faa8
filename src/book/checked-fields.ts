import { z } from 'zod';
import type { AllergenMark } from '../nutrition/allergens.ts';
import { ROLES } from '../nutrition/food.ts';
import { NUTRIENTS, type NutrientKey } from '../nutrition/nutrients.ts';
import { readAllergen } from './allergen-words.ts';
import type { FieldPath } from './place.ts';

/** `saturatedFatG` is written `saturated_fat_g` in the folder, `vitaminB12Mcg` is `vitamin_b12_mcg`. */
const folderName = (key: string): string => key.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);

/** How each nutrient is called in the kitchen's folder: amounts per 100 g, or per serving on a label. */
export const NUTRIENT_FIELDS: ReadonlyMap<string, NutrientKey> = new Map(
  NUTRIENTS.map((nutrient) => [folderName(nutrient.key), nutrient.key]),
);

export const idField = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'is not an id')
  .max(60);

export const allergenField = z.string().transform((word, context): AllergenMark => {
  const mark = readAllergen(word);
  if (typeof mark !== 'string') return mark;
  context.addIssue(mark);
  return z.NEVER;
});

/** Columns and keys that a table row and a package label share, once their cells are read. */
export const judgementFields = {
  id: idField,
  name: z.string().min(1).max(80),
  group: z.string().min(1).max(40),
  gluten: z.enum(['contains', 'labelled_gluten_free', 'no_gluten_grain']),
  lactose: z.enum(['contains', 'low', 'none']),
  storage: z.enum(['dry', 'cold', 'cold_once_opened', 'frozen']),
};

export const roleField = z.enum(ROLES);

const HINTS: Readonly<Record<string, string>> = {
  id: 'Write small letters, digits and hyphens: rolled-oats.',
  name: 'Write the plain kitchen name, at most 80 letters.',
  group: 'Write the shelf it belongs to: grain, dairy, fruit, nut or seed…',
  gluten: 'Write contains, labelled_gluten_free (only when the package says so) or no_gluten_grain.',
  lactose: 'Write contains, low or none.',
  storage: 'Write dry, cold, cold_once_opened or frozen.',
  roles: `Write roles from: ${ROLES.join(', ')}.`,
  source: 'Write usda with its number in ndb, or label or estimate with a source_note.',
  ndb: 'Write the five digits of the USDA number, leading zero kept: 08120.',
  allergen_basis: 'Write label when a package was read, kind when only the kind of food is known.',
};

/**
 * What to write in a field of a food, whether table or label.
 *
 * @example
 * foodHint(['gluten']) // 'Write contains, labelled_gluten_free (only when the package says so) or no_gluten_grain.'
 */
export function foodHint(path: FieldPath): string {
  const named = path.filter((step) => typeof step === 'string').at(-1) ?? '';
  if (HINTS[named] !== undefined) return HINTS[named];
  if (NUTRIENT_FIELDS.has(named)) return 'Write a number such as 3.5, or leave it out when it is not known.';
  if (/^(vegan|vegetarian|meat|pork)$/.test(named)) return 'Write yes or no.';
  return 'See foods.csv and the products folder of the demo kitchen for how it is written.';
}
