import type { MeasuredAmount } from '../../../nutrition/certainty/range.ts';
import type { Food } from '../../../nutrition/food.ts';
import type { UncountedLine } from '../../../nutrition/ingredient-list.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';

/** What the figures are about: a recipe, or foods in amounts. */
export interface Subject {
  readonly title: string;
  readonly recipe?: Recipe;
  /** One yield of the recipe, or the whole list. */
  readonly amounts: readonly MeasuredAmount[];
  readonly pieces: number;
  readonly pieceUnit: string;
  readonly handlingLoss: number;
  readonly moistureLoss: number;
  readonly uncounted: readonly UncountedLine[];
  /** What was assumed or changed, in words. */
  readonly notes: readonly string[];
  /** The food itself when the question is about a single one. */
  readonly food?: Food;
}

/** Grams of the subject as eaten: less what stays in the bowl and what the oven drives off. */
export function finishedMassG(subject: Subject): number {
  const rawG = subject.amounts.reduce((sum, amount) => sum + amount.massG, 0);
  return rawG * (1 - subject.handlingLoss) * (1 - subject.moistureLoss);
}
