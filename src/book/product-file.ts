import { z } from 'zod';
import type { Food, ProductLabel } from '../nutrition/food.ts';
import type { NutrientKey, Nutrients } from '../nutrition/nutrients.ts';
import { ALLERGEN_HINT, withImplied } from './allergen-words.ts';
import { allergenField, foodHint, judgementFields, NUTRIENT_FIELDS, roleField } from './checked-fields.ts';
import type { ReadFoods } from './food-table.ts';
import { readKitchenText } from './kitchen-file.ts';
import { type FieldPath, toBookProblem } from './place.ts';
import { unitField } from './portion-table.ts';
import { problemsOf } from './problems.ts';

const amount = z.number('must be a number').nonnegative('must not be negative');
const grams = z.number('must be a number of grams').positive('must be more than 0');
const text = z.string().min(1, 'must not be empty');
const marks = z.array(allergenField);
const figures = z.strictObject(
  Object.fromEntries([...NUTRIENT_FIELDS.keys()].map((name) => [name, amount.optional()])),
);

const productSchema = z.strictObject({
  ...judgementFields,
  aliases: z.array(text).default([]),
  serving: z.strictObject({ name: text, grams }),
  per_serving: figures,
  portions: z.array(z.strictObject({ unit: unitField, qualifier: text.optional(), grams })).default([]),
  ingredients: text,
  allergen_statement: text.optional(),
  advisory_statement: text.optional(),
  contains: marks,
  advisory: marks,
  vegan: z.boolean(),
  vegetarian: z.boolean(),
  meat: z.boolean(),
  pork: z.boolean(),
  roles: z.array(roleField),
  note: text.optional(),
  approved_by_dietitian: z.boolean(),
  protein_source: z.enum(['whey', 'soy', 'pea', 'egg_white', 'casein', 'rice']).optional(),
  flavor: text.optional(),
  lots: z
    .array(
      z.strictObject({ lot: z.coerce.string(), batch_tested: z.boolean(), use_by: z.iso.date().optional() }),
    )
    .default([]),
  price: z
    .strictObject({ cents: z.int().nonnegative(), package_grams: grams, package: text, section: text })
    .optional(),
});

type Sheet = z.infer<typeof productSchema>;

/**
 * Reads the text of one package label. The label's figures are per serving; the food's are derived per 100 g.
 *
 * @example
 * readProduct(text, 'products/whey-vanilla.yaml').foods[0]?.food.product?.servingG // 31
 */
export function readProduct(source: string, file: string): ReadFoods {
  const yaml = readKitchenText(source);
  if (!yaml.ok) return { foods: [], problems: [toBookProblem(file, yaml.line, yaml.complaint)] };
  const result = productSchema.safeParse(yaml.value);
  if (!result.success) {
    const problems = problemsOf(result.error, { file, lineOf: yaml.lineOf, hintOf });
    return { foods: [], problems };
  }
  const line = yaml.lineOf(['name']);
  return {
    foods: [{ food: foodOf(result.data), file, ...(line === undefined ? {} : { line }) }],
    problems: [],
  };
}

function foodOf(sheet: Sheet): Food {
  const { id, name, aliases, group, contains, advisory, gluten, lactose, roles, storage } = sheet;
  const { vegan, vegetarian, meat, pork } = sheet;
  const perServing = nutrientsOf(sheet.per_serving, 1);
  return {
    id,
    name,
    aliases,
    group,
    source: { kind: 'label', note: `the package label, per ${sheet.serving.name}` },
    per100g: nutrientsOf(sheet.per_serving, 100 / sheet.serving.grams),
    portions: sheet.portions.map((portion) => ({
      unit: portion.unit,
      ...(portion.qualifier === undefined ? {} : { qualifier: portion.qualifier }),
      massG: portion.grams,
    })),
    contains: withImplied(contains),
    advisory: withImplied(advisory),
    allergenBasis: 'label',
    gluten,
    lactose,
    vegan,
    vegetarian,
    meat,
    pork,
    roles,
    storage,
    ...(sheet.note === undefined ? {} : { note: sheet.note }),
    product: labelOf(sheet, perServing),
    ...priceOf(sheet),
  };
}

function labelOf(sheet: Sheet, perServing: Nutrients): ProductLabel {
  return {
    servingG: sheet.serving.grams,
    servingName: sheet.serving.name,
    perServing,
    ingredientsStatement: sheet.ingredients,
    ...(sheet.allergen_statement === undefined ? {} : { allergenStatement: sheet.allergen_statement }),
    ...(sheet.advisory_statement === undefined ? {} : { advisoryStatement: sheet.advisory_statement }),
    lots: sheet.lots.map(({ lot, batch_tested, use_by }) => ({
      lot,
      batchTested: batch_tested,
      ...(use_by === undefined ? {} : { useBy: use_by }),
    })),
    approvedByDietitian: sheet.approved_by_dietitian,
    ...(sheet.protein_source === undefined ? {} : { proteinSource: sheet.protein_source }),
    ...(sheet.flavor === undefined ? {} : { flavor: sheet.flavor }),
  };
}

function priceOf({ price }: Sheet): Pick<Food, 'price'> {
  if (price === undefined) return {};
  const { cents, package_grams, section } = price;
  return { price: { priceCents: cents, packageG: package_grams, packageName: price.package, section } };
}

function nutrientsOf(sheet: Sheet['per_serving'], factor: number): Nutrients {
  const nutrients: Partial<Record<NutrientKey, number>> = {};
  for (const [name, key] of NUTRIENT_FIELDS) {
    const value = sheet[name];
    if (value !== undefined) nutrients[key] = value * factor;
  }
  return nutrients;
}

function hintOf(path: FieldPath): string {
  const field = String(path[0] ?? '');
  if (field === 'contains' || field === 'advisory') return ALLERGEN_HINT;
  if (field === 'serving') return 'Write the serving of the label: { name: 1 scoop, grams: 31 }.';
  if (field === 'lots') return 'Write lots as { lot: "A12", batch_tested: true, use_by: 2026-12-31 }.';
  if (field === 'price')
    return 'Write { cents: 3499, package_grams: 907, package: 2 lb tub, section: protein }.';
  if (/^(vegan|vegetarian|meat|pork|approved_by_dietitian)$/.test(field)) return 'Write true or false.';
  return foodHint(path);
}
