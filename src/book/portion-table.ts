import { z } from 'zod';
import type { BookProblem } from '../nutrition/book.ts';
import { readTable } from '../nutrition/csv-table.ts';
import type { Portion } from '../nutrition/food.ts';
import { idField } from './checked-fields.ts';
import type { FieldPath } from './place.ts';
import { problemsOf } from './problems.ts';

export interface ReadPortion {
  readonly foodId: string;
  readonly portion: Portion;
  readonly file: string;
  readonly line: number;
}

const mass = z
  .string()
  .regex(/^\d+(\.\d+)?$/, 'must be a number of grams')
  .transform(Number)
  .refine((grams) => grams > 0, 'must be more than 0');

/** One unit as typed in a recipe: `cup`, `disher_16`, `medium`, `fun size`. */
export const unitField = z
  .string()
  .regex(/^[a-z][a-z0-9_ -]*$/, 'must be one unit in small letters, without an amount')
  .max(30);

const rowSchema = z.object({
  food: idField,
  unit: unitField,
  qualifier: z.string().max(60).optional(),
  mass_g: mass,
  source: z.enum(['usda', 'label', 'estimate']).default('estimate'),
});

const HINTS: Readonly<Record<string, string>> = {
  food: 'Write the id of a food of foods.csv: rolled-oats.',
  unit: 'Write the name of ONE unit: cup, tbsp, medium, slice; what qualifies it goes to the column qualifier.',
  qualifier: 'Write in a few words how it was cut or packed: sliced.',
  source: 'Write usda, label or estimate.',
  mass_g: 'Write the grams of ONE unit: for "2 tbsp = 32 g" write 16.',
};

/**
 * Reads the text of a portion table: one row a household measure, grams of one unit.
 *
 * @example
 * readPortionTable('food,unit,qualifier,mass_g\nrolled-oats,cup,,81\n', 'portions.csv').portions[0]?.portion
 * // { unit: 'cup', massG: 81, estimated: true }
 */
export function readPortionTable(
  text: string,
  file: string,
): { portions: readonly ReadPortion[]; problems: readonly BookProblem[] } {
  const table = readTable(text, file, {
    required: ['food', 'unit', 'mass_g'],
    optional: ['qualifier', 'source'],
  });
  const problems = [...table.problems];
  const portions: ReadPortion[] = [];
  for (const { line, cells } of table.rows) {
    const result = rowSchema.safeParse(cells);
    if (!result.success) {
      const hintOf = (path: FieldPath) => HINTS[String(path[0])] ?? 'Compare with other rows.';
      problems.push(...problemsOf(result.error, { file, lineOf: () => line, hintOf }));
      continue;
    }
    const { food, unit, qualifier, mass_g, source } = result.data;
    const portion = {
      unit,
      ...(qualifier === undefined ? {} : { qualifier }),
      massG: mass_g,
      ...(source === 'estimate' ? { estimated: true as const } : {}),
    };
    portions.push({ foodId: food, portion, file, line });
  }
  return { portions, problems };
}
