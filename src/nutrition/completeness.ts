import { hasFigure } from './compiled-food.ts';
import type { NutrientKey } from './nutrients.ts';
import type { FoodAmount } from './totals.ts';

/** How much of a mix a nutrient's figure stands on. */
export interface Completeness {
  /** Share of the mass whose foods have a figure, 0 to 1. */
  readonly massShare: number;
  readonly linesKnown: number;
  readonly lines: number;
}

/**
 * How complete the data of one nutrient is over a mix. Absent for an empty mix.
 * Example: 70 g with a figure beside 30 g without gives a mass share of 0.7, 1 of 2 lines.
 */
export function completeness(amounts: readonly FoodAmount[], key: NutrientKey): Completeness | undefined {
  const there = amounts.filter((amount) => amount.massG > 0);
  const massG = there.reduce((sum, amount) => sum + amount.massG, 0);
  if (massG === 0) return undefined;
  const known = there.filter((amount) => hasFigure(amount.food, key));
  const knownG = known.reduce((sum, amount) => sum + amount.massG, 0);
  return { massShare: knownG / massG, linesKnown: known.length, lines: there.length };
}
