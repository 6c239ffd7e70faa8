import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { BookProblem } from '../nutrition/book.ts';
import type { Food } from '../nutrition/food.ts';
import { checkFood } from './check-food.ts';
import { type ReadFoods, readFoodTable } from './food-table.ts';
import { joinFoods } from './join-foods.ts';
import { readPlainText } from './kitchen-file.ts';
import { toBookProblem } from './place.ts';
import { readPortionTable } from './portion-table.ts';
import { readPriceTable } from './price-table.ts';
import { readProduct } from './product-file.ts';

export interface LoadedFoods {
  readonly foods: ReadonlyMap<string, Food>;
  readonly problems: readonly BookProblem[];
}

/**
 * Reads foods.csv, portions.csv, prices.csv and products/*.yaml of each folder, the built-in one first. A later folder adds to
 * an earlier one and replaces foods of the same id; it may hold only some of the files. Never throws for what a
 * folder holds: what cannot be used is told in `problems` and left out.
 *
 * @example
 * loadFoods(['recipes', 'my-kitchen']).foods.get('rolled-oats')?.per100g.proteinG // 13.15
 */
export function loadFoods(folders: readonly string[]): LoadedFoods {
  const problems: BookProblem[] = [];
  const layers = folders.map((folder) => {
    if (!existsSync(folder)) problems.push(noFolder(folder));
    return readLayer(folder, problems);
  });
  const joined = joinFoods(layers);
  problems.push(...joined.problems);
  return { foods: joined.foods, problems };
}

function readLayer(folder: string, problems: BookProblem[]) {
  const table = readText(folder, 'foods.csv', problems);
  const sheets: ReadFoods[] = table === undefined ? [] : [readFoodTable(table, 'foods.csv')];
  for (const name of productFiles(folder)) {
    const file = `products/${name}`;
    const text = readText(folder, file, problems);
    if (text !== undefined) sheets.push(readProduct(text, file));
  }
  const measures = readText(folder, 'portions.csv', problems);
  const portions = measures === undefined ? undefined : readPortionTable(measures, 'portions.csv');
  const list = readText(folder, 'prices.csv', problems);
  const prices = list === undefined ? undefined : readPriceTable(list, 'prices.csv');
  for (const part of [...sheets, ...(portions ? [portions] : []), ...(prices ? [prices] : [])])
    problems.push(...part.problems);
  const foods = sheets
    .flatMap((sheet) => sheet.foods)
    .filter((read) => {
      const wrong = checkFood(read);
      problems.push(...wrong);
      return wrong.length === 0;
    });
  return { foods, portions: portions?.portions ?? [], prices: prices?.prices ?? [] };
}

function productFiles(folder: string): string[] {
  const products = join(folder, 'products');
  if (!existsSync(products)) return [];
  return readdirSync(products)
    .filter((name) => /\.ya?ml$/.test(name))
    .sort();
}

function readText(folder: string, file: string, problems: BookProblem[]): string | undefined {
  const path = join(folder, file);
  if (!existsSync(path)) return undefined;
  const text = readPlainText(path);
  if (typeof text === 'string') return text;
  problems.push(toBookProblem(file, undefined, text));
  return undefined;
}

function noFolder(folder: string): BookProblem {
  return {
    file: folder,
    message: `There is no folder "${folder}".`,
    hint: 'Name a folder that holds foods.csv, portions.csv, prices.csv, products, cards or kitchen.yaml.',
  };
}
