import type { Food } from './food.ts';
import type { Nutrients } from './nutrients.ts';
import type { Totals } from './totals.ts';

/** Kilocalories per gram of protein, fat and carbohydrate. */
export type EnergyFactors = NonNullable<Food['energyFactors']>;

/** General Atwater factors, 21 CFR 101.9(c)(1)(i)(B); carbohydrate includes fiber. */
export const GENERAL_FACTORS: EnergyFactors = { protein: 4, fat: 9, carbohydrate: 4 };

/**
 * Energy in kcal worked from the grams; absent when protein, fat or carbohydrate is not known.
 * Never a stand-in for a food's stated energy: bran and cocoa are far off 4-4-9 (see USDA Handbook 74).
 * Example: rolled oats, 13.15 / 6.52 / 67.7 g at 3.46 / 8.37 / 4.12, give 379.0 kcal.
 */
export function atwaterKcal(per: Nutrients, factors: EnergyFactors = GENERAL_FACTORS): number | undefined {
  const { proteinG, fatG, carbohydrateG } = per;
  if (proteinG === undefined || fatG === undefined || carbohydrateG === undefined) return undefined;
  return proteinG * factors.protein + fatG * factors.fat + carbohydrateG * factors.carbohydrate;
}

/** A stated energy beside what the grams give. */
export interface AtwaterCheck {
  readonly statedKcal: number;
  readonly workedKcal: number;
  readonly differenceKcal: number;
  /** Whose factors: the food's own or 4-4-9. */
  readonly basis: 'own_factors' | 'general';
}

/** Compares a food's stated energy per 100 g with its own factors, else 4-4-9; absent when a figure is missing. */
export function atwaterCheck(food: Pick<Food, 'per100g' | 'energyFactors'>): AtwaterCheck | undefined {
  const statedKcal = food.per100g.energyKcal;
  const workedKcal = atwaterKcal(food.per100g, food.energyFactors);
  if (statedKcal === undefined || workedKcal === undefined) return undefined;
  return {
    statedKcal,
    workedKcal,
    differenceKcal: workedKcal - statedKcal,
    basis: food.energyFactors ? 'own_factors' : 'general',
  };
}

/** Which share of the energy comes from what, 0 to 1, adding to 1. Basis: 4-4-9. */
export interface EnergyShares {
  readonly carbohydrate: number;
  readonly protein: number;
  readonly fat: number;
}

/** Shares of energy on a 4-4-9 basis; absent when any of the three grams is unknown or incomplete, or all are 0. */
export function energyShares(mix: Totals): EnergyShares | undefined {
  const grams = [mix.of('carbohydrateG'), mix.of('proteinG'), mix.of('fatG')] as const;
  if (grams.some((total) => total.atLeast || total.value === undefined)) return undefined;
  const [carbohydrate, protein, fat] = [4, 4, 9].map((factor, i) => (grams[i]?.value ?? 0) * factor) as [
    number,
    number,
    number,
  ];
  const sum = carbohydrate + protein + fat;
  if (sum <= 0) return undefined;
  return { carbohydrate: carbohydrate / sum, protein: protein / sum, fat: fat / sum };
}
