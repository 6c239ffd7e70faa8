import type { Food } from './food.ts';
import { NUTRIENTS, type NutrientKey } from './nutrients.ts';

/** Nutrient keys in table order: the index of a key is its place in every compiled array. */
export const NUTRIENT_KEYS: readonly NutrientKey[] = NUTRIENTS.map((nutrient) => nutrient.key);

const placeOf = new Map(NUTRIENT_KEYS.map((key, place) => [key, place]));

/** A food as arithmetic wants it: figures per gram (0 where unknown) beside bits that tell known from unknown. */
export interface CompiledFood {
  readonly perG: Float64Array;
  /** Bit `i` is set when the figure of `NUTRIENT_KEYS[i]` is known. */
  readonly known: number;
}

const compiled = new WeakMap<Food, CompiledFood>();

/** Place of a nutrient in compiled arrays. */
export function nutrientPlace(key: NutrientKey): number {
  return placeOf.get(key) ?? 0;
}

/** The compiled form of a food, made once per food object. A figure that is not finite counts as unknown. */
export function compiledFood(food: Food): CompiledFood {
  const ready = compiled.get(food);
  if (ready) return ready;
  const perG = new Float64Array(NUTRIENT_KEYS.length);
  let known = 0;
  NUTRIENT_KEYS.forEach((key, place) => {
    const per100g = food.per100g[key];
    if (per100g === undefined || !Number.isFinite(per100g)) return;
    perG[place] = per100g / 100;
    known |= 1 << place;
  });
  const made = { perG, known };
  compiled.set(food, made);
  return made;
}

/** Whether the food's own table or label has a figure for this nutrient. */
export function hasFigure(food: Food, key: NutrientKey): boolean {
  return ((compiledFood(food).known >> nutrientPlace(key)) & 1) === 1;
}
