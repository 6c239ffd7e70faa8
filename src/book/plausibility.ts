import type { Food } from '../nutrition/food.ts';
import type { Nutrients } from '../nutrition/nutrients.ts';

/**
 * Grams of water, protein, fat and carbohydrate in 100 g. Ash, alcohol and acids make up the rest, so real rows
 * of USDA SR28 run from 90 to 101.3 but for the few that say why not in their own row.
 */
const PROXIMATES_G = { least: 90, most: 102 };

/** USDA's own figures come back from its factors within 2 kcal; rounding of the macros explains the rest. */
const FACTOR_TOLERANCE = { kcal: 3, share: 0.02 };

/** Fiber yields nearly nothing in bran and cocoa and up to 4 kcal/g elsewhere; Handbook 74 factors run below 4-4-9. */
const BAND = { least: 0.8, most: 1.12, kcal: 8 };

/**
 * What cannot be right in the figures of a food, in words; empty when nothing stands out or too little is known.
 * Sugars above carbohydrate and fatty acids above fat are NOT wrong: real rows have them (lab values beside
 * carbohydrate by difference).
 *
 * @example
 * implausible({ per100g: { proteinG: 60, fatG: 60 } }) // ['water, protein, fat and carbohydrate come to 120 g …']
 */
export function implausible(food: Pick<Food, 'per100g' | 'energyFactors' | 'product'>): string[] {
  return [massProblem(food.per100g), energyProblem(food)].filter((text) => text !== undefined);
}

function massProblem({ waterG, proteinG, fatG, carbohydrateG }: Nutrients): string | undefined {
  const parts = [waterG, proteinG, fatG, carbohydrateG];
  const total = parts.reduce<number>((sum, part) => sum + (part ?? 0), 0);
  const complete = parts.every((part) => part !== undefined);
  if (total <= PROXIMATES_G.most && (!complete || total >= PROXIMATES_G.least)) return undefined;
  return `water, protein, fat and carbohydrate come to ${Math.round(total)} g in 100 g`;
}

function energyProblem(food: Pick<Food, 'per100g' | 'energyFactors' | 'product'>): string | undefined {
  const { energyKcal, proteinG, fatG, carbohydrateG, fiberG = 0 } = food.per100g;
  if (energyKcal === undefined || proteinG === undefined || fatG === undefined || carbohydrateG === undefined)
    return undefined;
  const factors = food.energyFactors;
  const [least, most] =
    factors === undefined
      ? band(proteinG, fatG, carbohydrateG, Math.min(fiberG, carbohydrateG), labelSlackKcal(food.product))
      : around(proteinG * factors.protein + fatG * factors.fat + carbohydrateG * factors.carbohydrate);
  if (energyKcal >= least && energyKcal <= most) return undefined;
  const by = factors === undefined ? 'about 4, 4 and 9 kcal a gram' : 'its own factors';
  return `${energyKcal.toFixed(0)} kcal does not fit its protein, fat and carbohydrate, which by ${by} give ${least.toFixed(0)} to ${most.toFixed(0)}`;
}

function around(kcal: number): readonly [number, number] {
  const slack = Math.max(FACTOR_TOLERANCE.kcal, FACTOR_TOLERANCE.share * kcal);
  return [kcal - slack, kcal + slack];
}

function band(protein: number, fat: number, carbohydrate: number, fiber: number, slackKcal: number) {
  const digestible = 4 * protein + 9 * fat + 4 * (carbohydrate - fiber);
  const slack = BAND.kcal + slackKcal;
  return [BAND.least * digestible - slack, BAND.most * (digestible + 4 * fiber) + slack] as const;
}

/**
 * A label rounds protein and carbohydrate to 1 g, fat to 0.5 g (1 g above 5 g) and energy to 10 kcal a serving,
 * 21 CFR 101.9(c); per 100 g of a small serving that is much.
 */
function labelSlackKcal(product: Food['product']): number {
  if (product === undefined) return 0;
  const perServingKcal = 0.5 * 4 + 0.5 * 4 + 0.5 * 9 + 5;
  return (perServingKcal * 100) / product.servingG;
}
