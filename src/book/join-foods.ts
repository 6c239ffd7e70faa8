import type { BookProblem } from '../nutrition/book.ts';
import type { Food, PackagePrice, Portion } from '../nutrition/food.ts';
import { nameKey } from '../nutrition/name-key.ts';
import type { ReadFood } from './food-table.ts';
import type { ReadPortion } from './portion-table.ts';
import type { ReadPrice } from './price-table.ts';

/** What one folder holds. */
export interface FoodLayer {
  readonly foods: readonly ReadFood[];
  readonly portions: readonly ReadPortion[];
  readonly prices?: readonly ReadPrice[];
}

/**
 * Lays folders over each other, gives every food its portions and price, and makes each name point to one food: names and
 * ids come before aliases, a later folder before an earlier one, an earlier line before a later one.
 *
 * @example
 * joinFoods([builtIn, kitchen]).foods.get('granola') // the kitchen's own
 */
export function joinFoods(layers: readonly FoodLayer[]): {
  foods: ReadonlyMap<string, Food>;
  problems: readonly BookProblem[];
} {
  const problems: BookProblem[] = [];
  const reads = new Map<string, ReadFood & { layer: number }>();
  layers.forEach((layer, index) => {
    for (const read of layer.foods) {
      const before = reads.get(read.food.id);
      if (before?.layer === index) problems.push(usedTwice(read, before));
      else reads.set(read.food.id, { ...read, layer: index });
    }
  });
  const portions = portionsByFood(layers, reads, problems);
  const prices = pricesByFood(layers, reads, problems);
  const aliases = settleAliases([...reads.values()], problems);
  const foods = new Map<string, Food>();
  for (const [id, { food }] of reads) {
    const own = mergePortions(food.portions, portions.get(id) ?? []);
    const price = prices.get(id);
    const priced = price === undefined ? food : { ...food, price };
    foods.set(id, { ...priced, portions: own, aliases: aliases.get(id) ?? [] });
  }
  return { foods, problems };
}

function portionsByFood(
  layers: readonly FoodLayer[],
  foods: ReadonlyMap<string, unknown>,
  problems: BookProblem[],
): Map<string, Portion[]> {
  const byFood = new Map<string, Portion[]>();
  for (const row of layers.flatMap((layer) => layer.portions)) {
    const { foodId, portion } = row;
    if (foods.has(foodId)) byFood.set(foodId, mergePortions(byFood.get(foodId) ?? [], [portion]));
    else problems.push(noSuchFood(row));
  }
  return byFood;
}

/** The last row that names a food decides: a kitchen's own list over the built-in one. */
function pricesByFood(
  layers: readonly FoodLayer[],
  foods: ReadonlyMap<string, unknown>,
  problems: BookProblem[],
): Map<string, PackagePrice> {
  const byFood = new Map<string, PackagePrice>();
  for (const row of layers.flatMap((layer) => layer.prices ?? [])) {
    if (foods.has(row.foodId)) byFood.set(row.foodId, row.price);
    else problems.push(noSuchFood(row));
  }
  return byFood;
}

const noSuchFood = ({ foodId, file, line }: ReadPortion | ReadPrice): BookProblem => ({
  file,
  line,
  field: 'food',
  message: `No food has the id "${foodId}".`,
  hint: 'Write the id of a food of foods.csv or of a product; a food that is itself wrong is left out.',
});

/** A later portion of the same unit and qualifier takes the place of the earlier one. */
function mergePortions(earlier: readonly Portion[], later: readonly Portion[]): Portion[] {
  const key = ({ unit, qualifier }: Portion) => `${unit}|${qualifier ?? ''}`;
  const merged = new Map(earlier.map((portion) => [key(portion), portion]));
  for (const portion of later) merged.set(key(portion), portion);
  return [...merged.values()];
}

type Placed = ReadFood & { readonly layer: number };

function settleAliases(reads: readonly Placed[], problems: BookProblem[]): Map<string, string[]> {
  const owner = new Map<string, Placed>();
  for (const read of reads) {
    owner.set(nameKey(read.food.id), read);
    owner.set(nameKey(read.food.name), read);
  }
  const settled = new Map<string, string[]>();
  for (const read of [...reads].sort((a, b) => b.layer - a.layer)) {
    const kept = read.food.aliases.filter((alias) => {
      const other = owner.get(nameKey(alias));
      if (other === undefined) owner.set(nameKey(alias), read);
      else if (other.food.id !== read.food.id && other.layer === read.layer)
        problems.push(aliasTaken(read, other, alias));
      return other === undefined || other.food.id === read.food.id;
    });
    settled.set(read.food.id, kept);
  }
  return settled;
}

const place = (read: ReadFood) => ({
  file: read.file,
  ...(read.line === undefined ? {} : { line: read.line }),
});

function aliasTaken(read: ReadFood, other: ReadFood, alias: string): BookProblem {
  return {
    ...place(read),
    field: 'aliases',
    message: `"${alias}" already means ${other.food.id}; ${read.food.id} is not found by it.`,
    hint: 'Give the word to one of the two.',
  };
}

function usedTwice(read: ReadFood, before: ReadFood): BookProblem {
  return {
    ...place(read),
    field: 'id',
    message: `The id ${read.food.id} is already used in ${before.file}; this one is left out.`,
    hint: 'Give each food and each product its own id.',
  };
}
