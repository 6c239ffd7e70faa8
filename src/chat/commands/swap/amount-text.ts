import type { Food } from '../../../nutrition/food.ts';

/** Grams of a food as a bench reads them: a tenth below 10 g, whole above. */
export const amountText = (_food: Food, massG: number): string =>
  `${massG < 10 ? massG.toFixed(1) : Math.round(massG)} g`;
