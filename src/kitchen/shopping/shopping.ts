import type { Book } from '../../nutrition/book.ts';
import { type Packages, packagesFor } from '../../nutrition/cost/packages.ts';
import type { Food } from '../../nutrition/food.ts';
import type { ScaledRecipe } from '../../nutrition/scale/scale-recipe.ts';
import type { FoodAmount } from '../../nutrition/totals.ts';
import { sectionOf } from '../pantry/section.ts';
import type { ListedItem } from './list-now.ts';
import type { Shelf } from './shelf-now.ts';

/** One food of a shopping trip. Grams. */
export interface ShoppingLine {
  readonly food: Food;
  readonly section: string;
  /** What all batches take together. */
  readonly neededG: number;
  /** What can be used of what is on the shelf; absent when nobody has ever told of this food. */
  readonly onHandG?: number;
  /** Held, but opened and past its date when it is wanted: not counted as on hand. */
  readonly pastDateG: number;
  /** What was put on the list by hand, bought whatever is on the shelf. */
  readonly listed?: ListedItem;
  /** Needed less on hand, and what was listed. */
  readonly toBuyG: number;
  /** Absent when nothing is to be bought, or no package of it is known. */
  readonly packages?: Packages;
}

/** Something on the list that is none of the kitchen's foods. */
export type OtherItem = ListedItem;

export interface Shopping {
  /** By section of the shop, then by name; what needs no buying has `toBuyG` 0. */
  readonly lines: readonly ShoppingLine[];
  readonly others: readonly OtherItem[];
  /** Whole cents of the packages; a lower bound when `unpriced` is not empty. */
  readonly cents: number;
  /** To be bought, and nobody knows the price. */
  readonly unpriced: readonly Food[];
}

/**
 * What the bench takes of each food for one batch: as measured, or as worked out where rounding to a measure took
 * some off, so that what was bought always does.
 */
export function amountsFor(scaled: ScaledRecipe): FoodAmount[] {
  return scaled.lines.map(({ food, measure, eachMix }) => {
    const measuredG = eachMix ? eachMix.massG * scaled.mixes.count : measure.massG;
    return { food, massG: Math.max(measure.exactG, measuredG) };
  });
}

/** Needed, less what is on the shelf, and what was listed by hand: in whole packages, as the shop has them. */
export function shoppingOf(
  needs: readonly FoodAmount[],
  listed: readonly ListedItem[],
  shelf: Shelf,
  book: Book,
): Shopping {
  const neededG = new Map<string, number>();
  const foods = new Map<string, Food>();
  for (const { food, massG } of needs) {
    foods.set(food.id, food);
    neededG.set(food.id, (neededG.get(food.id) ?? 0) + massG);
  }
  const byFood = new Map<string, ListedItem>();
  const others: OtherItem[] = [];
  for (const item of listed) {
    const food = item.foodId === undefined ? undefined : book.foods.get(item.foodId);
    if (food) {
      foods.set(food.id, food);
      byFood.set(food.id, item);
    } else others.push(item);
  }
  const lines = [...foods.values()]
    .map((food) => lineOf(food, neededG.get(food.id) ?? 0, byFood.get(food.id), shelf))
    .sort(bySection);
  return {
    lines,
    others,
    cents: lines.reduce((sum, { packages }) => sum + (packages?.cents ?? 0), 0),
    unpriced: lines.filter(isWanted).flatMap(({ food, packages }) => (packages ? [] : [food])),
  };
}

/** Whether a line is to be bought: short of something, or listed by hand without an amount. */
export const isWanted = ({ toBuyG, listed }: ShoppingLine): boolean => toBuyG > 0 || listed !== undefined;

/** Less is weighing noise, not a reason to go shopping. */
const NOISE_G = 0.5;

function lineOf(food: Food, neededG: number, listed: ListedItem | undefined, shelf: Shelf): ShoppingLine {
  const pastDateG = shelf.pastDateG.get(food.id) ?? 0;
  const usableG = Math.max(0, (shelf.heldG.get(food.id) ?? 0) - pastDateG);
  const shortG = neededG - usableG;
  const toBuyG = (shortG > Math.min(NOISE_G, neededG / 100) ? shortG : 0) + (listed?.massG ?? 0);
  // Listed without an amount is one package; what else is short comes out of it.
  const onePackageG = listed ? (food.price?.packageG ?? 0) : 0;
  const packages = packagesFor(food, toBuyG > 0 ? toBuyG : onePackageG);
  return {
    food,
    section: sectionOf(food),
    neededG,
    ...(shelf.known.has(food.id) ? { onHandG: usableG } : {}),
    pastDateG,
    ...(listed ? { listed } : {}),
    toBuyG,
    ...(packages ? { packages } : {}),
  };
}

function bySection(a: ShoppingLine, b: ShoppingLine): number {
  const last = ({ section }: ShoppingLine) => (section === 'other' ? 1 : 0);
  return (
    last(a) - last(b) ||
    a.section.localeCompare(b.section, 'en') ||
    a.food.name.localeCompare(b.food.name, 'en')
  );
}
