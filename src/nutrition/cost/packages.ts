import type { Food } from '../food.ts';

/** Whole packages of a food, as they are bought. */
export interface Packages {
  readonly count: number;
  readonly packageG: number;
  readonly packageName: string;
  /** Whole cents for all of them. */
  readonly cents: number;
}

/** Below this share of a package an amount is the rounding of a computer, not a need. */
const ROUNDING = 1e-9;

/**
 * The fewest whole packages that hold an amount; `undefined` when no package of this food is known.
 * @example packagesFor(oats, 810) // one 50 lb bag, { count: 1, packageG: 22680, cents: 3450, … }
 */
export function packagesFor({ price }: Food, massG: number): Packages | undefined {
  if (!price || !(price.packageG > 0) || !(massG > 0)) return undefined;
  const count = Math.max(1, Math.ceil(massG / price.packageG - ROUNDING));
  const { packageG, packageName } = price;
  return { count, packageG, packageName, cents: count * price.priceCents };
}
