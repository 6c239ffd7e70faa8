import { z } from 'zod';
import type { BookProblem } from '../nutrition/book.ts';
import { readTable, type TableRow } from '../nutrition/csv-table.ts';
import type { Food, FoodSource } from '../nutrition/food.ts';
import type { NutrientKey, Nutrients } from '../nutrition/nutrients.ts';
import { ALLERGEN_HINT, withImplied } from './allergen-words.ts';
import { allergenField, foodHint, judgementFields, NUTRIENT_FIELDS, roleField } from './checked-fields.ts';
import type { FieldPath } from './place.ts';
import { problemsOf } from './problems.ts';

/** A food read from one row, its portions not yet joined, with where it stands for later checks. */
export interface ReadFood {
  readonly food: Food;
  readonly file: string;
  readonly line?: number;
  /** The writer's own reason why a plausibility check does not hold for this food. */
  readonly implausibleBecause?: string;
}

export interface ReadFoods {
  readonly foods: readonly ReadFood[];
  readonly problems: readonly BookProblem[];
}

const number = z
  .string()
  .regex(/^\d+(\.\d+)?$/, 'must be a number that is not negative')
  .transform(Number);
const yesNo = z.enum(['yes', 'no']).transform((word) => word === 'yes');
const words = (cell: string): string[] =>
  cell
    .split(';')
    .map((word) => word.trim())
    .filter((word) => word !== '');
const list = z.string().transform(words);
const marks = list.pipe(z.array(allergenField)).default([]);
const per100g = Object.fromEntries(
  [...NUTRIENT_FIELDS.keys()].map((name) => [name, number.optional()]),
) as Record<string, z.ZodOptional<typeof number>>;

const rowSchema = z.object({
  ...judgementFields,
  aliases: list.default([]),
  source: z.enum(['usda', 'label', 'estimate']),
  ndb: z
    .string()
    .regex(/^\d{5}$/, 'must have five digits')
    .optional(),
  fdc_id: z.string().regex(/^\d+$/, 'must be digits').optional(),
  source_note: z.string().min(1, 'must say where the figures come from'),
  factor_protein: number.optional(),
  factor_fat: number.optional(),
  factor_carbohydrate: number.optional(),
  contains: marks,
  advisory: marks,
  allergen_basis: z.enum(['label', 'kind']),
  vegan: yesNo,
  vegetarian: yesNo,
  meat: yesNo,
  pork: yesNo,
  roles: list.pipe(z.array(roleField)).default([]),
  note: z.string().optional(),
  implausible_because: z.string().optional(),
});
const nutrientSchema = z.object(per100g);

type Row = z.infer<typeof rowSchema>;

const OPTIONAL = ['aliases', 'ndb', 'fdc_id', 'factor_protein', 'factor_fat', 'factor_carbohydrate'];
const OPTIONAL_LATER = ['contains', 'advisory', 'roles', 'note', 'implausible_because'];
const optional = [...OPTIONAL, ...OPTIONAL_LATER, ...NUTRIENT_FIELDS.keys()];
const required = Object.keys(rowSchema.shape).filter((name) => !optional.includes(name));

/**
 * Reads the text of a food table; one bad row is a problem and the other rows are kept.
 *
 * @example
 * readFoodTable(text, 'foods.csv').foods[0]?.food.id // 'rolled-oats'
 */
export function readFoodTable(text: string, file: string): ReadFoods {
  const table = readTable(text, file, { required, optional });
  const problems = [...table.problems];
  const foods: ReadFood[] = [];
  const seen = new Map<string, number>();
  for (const row of table.rows) {
    const read = readRow(row, file, problems);
    if (read === undefined) continue;
    const before = seen.get(read.food.id);
    if (before !== undefined) {
      problems.push({
        file,
        line: row.line,
        field: 'id',
        message: `The id ${read.food.id} is already used in line ${before}; this row is left out.`,
        hint: 'Give each food its own id.',
      });
      continue;
    }
    seen.set(read.food.id, row.line);
    foods.push(read);
  }
  return { foods, problems };
}

function readRow(row: TableRow, file: string, problems: BookProblem[]): ReadFood | undefined {
  const judged = rowSchema.safeParse(row.cells);
  const figures = nutrientSchema.safeParse(row.cells);
  if (!judged.success || !figures.success) {
    const where = { file, lineOf: () => row.line, hintOf };
    for (const result of [judged, figures])
      if (!result.success) problems.push(...problemsOf(result.error, where));
    return undefined;
  }
  const source = sourceOf(judged.data);
  if (typeof source === 'string') {
    const field = 'source';
    problems.push({ file, line: row.line, field, message: `${field}: ${source}`, hint: hintOf([field]) });
    return undefined;
  }
  const why = judged.data.implausible_because;
  return {
    food: foodOf(judged.data, nutrientsOf(figures.data), source),
    file,
    line: row.line,
    ...(why === undefined ? {} : { implausibleBecause: why }),
  };
}

function foodOf(row: Row, per100g: Nutrients, source: FoodSource): Food {
  const factors = {
    protein: row.factor_protein,
    fat: row.factor_fat,
    carbohydrate: row.factor_carbohydrate,
  };
  return {
    id: row.id,
    name: row.name,
    aliases: row.aliases,
    group: row.group,
    source,
    per100g,
    ...(hasAll(factors) ? { energyFactors: factors } : {}),
    portions: [],
    contains: withImplied(row.contains),
    advisory: withImplied(row.advisory),
    allergenBasis: row.allergen_basis,
    gluten: row.gluten,
    lactose: row.lactose,
    vegan: row.vegan,
    vegetarian: row.vegetarian,
    meat: row.meat,
    pork: row.pork,
    roles: row.roles,
    storage: row.storage,
    ...(row.note === undefined ? {} : { note: row.note }),
  };
}

type Complete<T> = { [K in keyof T]-?: NonNullable<T[K]> };

function hasAll<T extends Record<string, unknown>>(values: T): values is T & Complete<T> {
  return Object.values(values).every((value) => value !== undefined);
}

function nutrientsOf(cells: Record<string, number | undefined>): Nutrients {
  const nutrients: Partial<Record<NutrientKey, number>> = {};
  for (const [name, key] of NUTRIENT_FIELDS) {
    const amount = cells[name];
    if (amount !== undefined) nutrients[key] = amount;
  }
  return nutrients;
}

function sourceOf(row: Row): FoodSource | string {
  if (row.source !== 'usda') return { kind: row.source, note: row.source_note };
  if (row.ndb === undefined) return 'a food of USDA needs its number in the column ndb';
  const fdc = row.fdc_id === undefined ? {} : { fdcId: row.fdc_id };
  return { kind: 'usda_sr28', ndbNo: row.ndb, ...fdc, description: row.source_note };
}

function hintOf(path: FieldPath): string {
  const column = String(path[0] ?? '');
  if (column === 'contains' || column === 'advisory') return ALLERGEN_HINT;
  return foodHint(path);
}
