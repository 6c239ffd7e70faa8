import type { Food } from '../../src/nutrition/food.ts';
import { massOf } from '../../src/nutrition/portion/mass-of.ts';
import type { Pan, Recipe, RecipeLine } from '../../src/nutrition/recipe.ts';
import { foodsOf, recipeOf } from './foods.ts';
import {
  BUTTER,
  EGG,
  HONEY,
  MILK,
  OATS,
  PEA_PROTEIN,
  PEANUT_BUTTER,
  SALT,
  STRAWBERRY,
  WHEY,
} from './measured-foods.ts';

/** A line as written in a recipe file: amount and unit of a food, grams by the food's own portion. */
export function writtenLine(
  food: Food,
  amount: number,
  unit: string,
  more: Partial<RecipeLine> = {},
): RecipeLine {
  return {
    foodId: food.id,
    amount: { numerator: Math.round(amount * 48), denominator: 48 },
    unit,
    written: `${amount} ${unit} ${food.name}`,
    massG: massOf(food, Math.round(amount * 48) / 48, unit).massG,
    role: 'dry_base',
    measuredBy: 'levelled',
    optional: false,
    ...more,
  };
}

export const HALF_SHEET: Pan = {
  id: 'half-sheet',
  name: 'half sheet pan',
  lengthIn: 18,
  widthIn: 13,
  depthIn: 1,
};
export const QUARTER_SHEET: Pan = {
  id: 'quarter-sheet',
  name: 'quarter sheet pan',
  lengthIn: 13,
  widthIn: 9,
  depthIn: 1,
};
export const PANS = [HALF_SHEET, QUARTER_SHEET];

/** Every food of the measured table. */
export const FOODS = foodsOf(
  OATS,
  PEANUT_BUTTER,
  MILK,
  HONEY,
  EGG,
  WHEY,
  SALT,
  BUTTER,
  STRAWBERRY,
  PEA_PROTEIN,
);

/** A no-bake bar for one quarter sheet, 4 x 4; amounts are made up for the tests. */
export const TEST_BAR: Recipe = recipeOf(
  'test_bar',
  [
    writtenLine(OATS, 4, 'cup'),
    writtenLine(WHEY, 6, 'scoop'),
    writtenLine(PEANUT_BUTTER, 0.75, 'cup'),
    writtenLine(HONEY, 0.5, 'cup'),
    writtenLine(MILK, 0.5, 'cup'),
    writtenLine(SALT, 0.25, 'tsp'),
  ],
  { yieldPieces: 16, pan: QUARTER_SHEET, cut: { rows: 4, columns: 4 }, bowlG: 2500 },
);
