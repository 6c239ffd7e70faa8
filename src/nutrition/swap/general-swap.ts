import type { Food } from '../food.ts';
import type { Recipe } from '../recipe.ts';
import { findSwaps, type SwapAnswer, type SwapQuestion } from './find-swaps.ts';

/**
 * Swaps for one ingredient outside any recipe: a recipe of that one line, so the same search and the same rules
 * serve. Amounts are for `massG` of the ingredient in the first role it can play.
 */
export function findGeneralSwaps(
  food: Food,
  massG: number,
  question: Omit<SwapQuestion, 'recipe' | 'without'>,
): SwapAnswer {
  return findSwaps({ ...question, recipe: lineOf(food, massG), without: [food] });
}

/** A recipe of one line, eaten as it is mixed. */
export function lineOf(food: Food, massG: number): Recipe {
  const tenths = Math.round(massG * 10);
  return {
    id: 'one-ingredient',
    title: food.name,
    aliases: [],
    kind: 'other',
    version: '2026-01-01',
    yieldPieces: 1,
    pieceUnit: 'serving',
    lines: [
      {
        foodId: food.id,
        amount: { numerator: tenths, denominator: 10 },
        unit: 'g',
        written: `${tenths / 10} g`,
        massG,
        role: food.roles[0] ?? 'flavor',
        measuredBy: 'weighed',
        optional: false,
      },
    ],
    moistureLoss: 0,
    handlingLoss: 0,
    steps: [],
    storage: 'refrigerated',
    shelfLifeDays: 1,
    tags: [],
  };
}
