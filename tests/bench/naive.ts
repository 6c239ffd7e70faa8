import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse as parseCsv } from 'csv-parse/sync';
import { parse as parseYaml } from 'yaml';

/** The bench runs from dist/. */
const inRecipes = (file: string): string => fileURLToPath(new URL(`../recipes/${file}`, import.meta.url));

/**
 * What a script would do that keeps nothing: read the card and the food table again, multiply, add up, for one answer.
 * It does less than the program (no rounding to measures, no allergens, no cautions), so the comparison favors it.
 */
export function naiveAnswer(): string {
  const card = parseYaml(readFileSync(inRecipes('cards/oat-bars.yaml'), 'utf8'));
  const foods: Record<string, string>[] = parseCsv(readFileSync(inRecipes('foods.csv'), 'utf8'), {
    columns: true,
    relax_column_count: true,
  });
  const names = new Map(foods.map((food) => [Object.values(food)[0], food]));
  const factor = 40 / Number.parseInt(String(card.yield), 10);
  return card.ingredients
    .map((line: unknown) => (typeof line === 'string' ? line : JSON.stringify(line)))
    .map((line: string) => line.replace(/\d+(\.\d+)?/, (amount) => String(Number(amount) * factor)))
    .concat(`${names.size} foods`)
    .join('\n');
}
