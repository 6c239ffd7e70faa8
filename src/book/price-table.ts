import { z } from 'zod';
import type { BookProblem } from '../nutrition/book.ts';
import { readTable } from '../nutrition/csv-table.ts';
import type { PackagePrice } from '../nutrition/food.ts';
import { idField } from './checked-fields.ts';
import type { FieldPath } from './place.ts';
import { problemsOf } from './problems.ts';

export interface ReadPrice {
  readonly foodId: string;
  readonly price: PackagePrice;
  readonly file: string;
  readonly line: number;
}

const rowSchema = z.object({
  food: idField,
  price_cents: z
    .string()
    .regex(/^\d{1,7}$/, 'must be whole cents')
    .transform(Number),
  package_g: z
    .string()
    .regex(/^\d+(\.\d+)?$/, 'must be a number of grams')
    .transform(Number)
    .refine((grams) => grams > 0 && grams <= 1_000_000, 'must be more than 0 g and at most 1,000,000 g'),
  package_name: z.string().min(1).max(60),
  section: z.string().min(1).max(40),
});

const HINTS: Readonly<Record<string, string>> = {
  food: 'Write the id of a food of foods.csv: rolled-oats.',
  price_cents: 'Write whole cents: 349 for $3.49.',
  package_g: 'Write the grams in one package: 1191 for 42 oz.',
  package_name: 'Write how it is bought: 42 oz box.',
  section: 'Write the section of the shop: dry goods.',
};

/**
 * Reads the text of a price list: one row a food, the package it is bought in and what that costs.
 *
 * @example
 * readPriceTable('food,price_cents,package_g,package_name,section\nhoney,1799,2268,5 lb jug,sweeteners\n', 'prices.csv')
 */
export function readPriceTable(
  text: string,
  file: string,
): { prices: readonly ReadPrice[]; problems: readonly BookProblem[] } {
  const table = readTable(text, file, { required: Object.keys(rowSchema.shape), optional: [] });
  const problems = [...table.problems];
  const prices: ReadPrice[] = [];
  for (const { line, cells } of table.rows) {
    const result = rowSchema.safeParse(cells);
    if (!result.success) {
      const hintOf = (path: FieldPath) => HINTS[String(path[0])] ?? 'Compare with other rows.';
      problems.push(...problemsOf(result.error, { file, lineOf: () => line, hintOf }));
      continue;
    }
    const { food, price_cents, package_g, package_name, section } = result.data;
    const price = { priceCents: price_cents, packageG: package_g, packageName: package_name, section };
    prices.push({ foodId: food, price, file, line });
  }
  return { prices, problems };
}
