import { compiledFood, hasFigure, NUTRIENT_KEYS, nutrientPlace } from './compiled-food.ts';
import type { Food } from './food.ts';
import type { NutrientKey } from './nutrients.ts';
import { Problem } from './problem.ts';

/** So many grams of one food, edible portion. */
export interface FoodAmount {
  readonly food: Food;
  readonly massG: number;
}

/** One nutrient of a mix, in the nutrient's own unit. */
export interface NutrientTotal {
  readonly key: NutrientKey;
  /** Absent when no food in the mix has a figure. */
  readonly value: number | undefined;
  /** True when some food has no figure: the true total is this value or more. */
  readonly atLeast: boolean;
  /** The foods without a figure, in the order of the mix, each once. */
  readonly missing: readonly Food[];
}

/** Sums of a mix for arithmetic in bulk: no names, only which nutrients are incomplete. */
export interface Tally {
  readonly massG: number;
  readonly values: Float64Array;
  /** Bit `i` set: at least one food has a figure for nutrient `i`. */
  readonly known: number;
  /** Bit `i` set: at least one food lacks it, so the value is "at least". */
  readonly lacking: number;
}

/** All nutrients of a mix of foods. */
export interface Totals {
  readonly massG: number;
  readonly amounts: readonly FoodAmount[];
  of(key: NutrientKey): NutrientTotal;
  /** The same nutrients in `factor` times the mix: a piece is 1 / pieces. Mass follows too. */
  times(factor: number): Totals;
}

function checkMass(massG: number): void {
  if (Number.isFinite(massG) && massG >= 0) return;
  throw new Problem(
    'bad_quantity',
    'An amount of food must be zero or more grams.',
    'Write grams, like "30 g".',
  );
}

/**
 * Sums a mix fast enough for a search over the whole food table (about a microsecond a food).
 * Throws `bad_quantity` on a negative or non-finite mass.
 */
export function tally(amounts: readonly FoodAmount[]): Tally {
  const values = new Float64Array(NUTRIENT_KEYS.length);
  let massG = 0;
  let known = 0;
  let lacking = 0;
  for (const amount of amounts) {
    checkMass(amount.massG);
    if (amount.massG === 0) continue;
    const food = compiledFood(amount.food);
    massG += amount.massG;
    known |= food.known;
    lacking |= ~food.known;
    for (let place = 0; place < values.length; place++) {
      values[place] = (values[place] ?? 0) + (food.perG[place] ?? 0) * amount.massG;
    }
  }
  return { massG, values, known, lacking };
}

/** One nutrient out of a tally, in its unit; `undefined` when no food has a figure. */
export function tallied(sum: Tally, key: NutrientKey): number | undefined {
  const place = nutrientPlace(key);
  return (sum.known >> place) & 1 ? sum.values[place] : undefined;
}

/** Whether a tallied nutrient is only a lower bound. */
export function isAtLeast(sum: Tally, key: NutrientKey): boolean {
  return ((sum.lacking >> nutrientPlace(key)) & 1) === 1;
}

/**
 * Nutrients of a mix, where a food without a figure makes the total "at least" and is named.
 * Example: `totals([{ food: oats, massG: 81 }]).of('energyKcal').value` is 306.99 (USDA SR28 08120, 1 cup).
 * Throws `bad_quantity` on a negative or non-finite mass.
 */
export function totals(amounts: readonly FoodAmount[]): Totals {
  return totalsOf(tally(amounts), amounts, 1);
}

function totalsOf(sum: Tally, amounts: readonly FoodAmount[], factor: number): Totals {
  return {
    massG: sum.massG * factor,
    amounts,
    of(key) {
      const value = tallied(sum, key);
      const atLeast = isAtLeast(sum, key);
      return {
        key,
        value: value === undefined ? undefined : value * factor,
        atLeast,
        missing: atLeast ? foodsWithout(amounts, key) : [],
      };
    },
    times(more) {
      checkMass(more);
      return totalsOf(sum, amounts, factor * more);
    },
  };
}

function foodsWithout(amounts: readonly FoodAmount[], key: NutrientKey): Food[] {
  const lacking = amounts.filter((amount) => amount.massG > 0 && !hasFigure(amount.food, key));
  return [...new Set(lacking.map((amount) => amount.food))];
}
