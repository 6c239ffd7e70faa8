import { compiledFood, nutrientPlace } from '../compiled-food.ts';
import type { Food } from '../food.ts';
import { type MeasureWay, measureWays } from '../measure/measure-way.ts';
import { Problem } from '../problem.ts';
import type { Recipe, RecipeLine } from '../recipe.ts';
import { readUnit } from '../units/unit.ts';
import { TEASPOON_ML } from '../units/unit-table.ts';

export interface TableLine {
  readonly line: RecipeLine;
  readonly food: Food;
  /** Ways to measure it, the one the recipe is written in first. */
  readonly ways: readonly MeasureWay[];
  /** Grams of protein in one gram; 0 where unknown, so that it cannot steer the rounding. */
  readonly proteinPerG: number;
}

/** What scaling needs of a recipe, worked out once. */
export interface RecipeTable {
  readonly lines: readonly TableLine[];
  /** Grams of all lines for one recipe yield, raw. */
  readonly rawG: number;
  /** Grams after the oven and what stays in the bowl. */
  readonly finishedG: number;
  readonly proteinG: number;
}

const tables = new WeakMap<
  Recipe,
  { readonly foods: ReadonlyMap<string, Food>; readonly table: RecipeTable }
>();

/** The table of a recipe, made once per recipe and foods. @throws Problem `unknown_food` for a line without a food. */
export function recipeTable(recipe: Recipe, foods: ReadonlyMap<string, Food>): RecipeTable {
  const ready = tables.get(recipe);
  if (ready?.foods === foods) return ready.table;
  const lines = recipe.lines.map((line) => tableLine(recipe, line, foods));
  const rawG = lines.reduce((sum, { line }) => sum + line.massG, 0);
  const table: RecipeTable = {
    lines,
    rawG,
    finishedG: rawG * (1 - recipe.moistureLoss) * (1 - recipe.handlingLoss),
    proteinG: lines.reduce((sum, { line, proteinPerG }) => sum + line.massG * proteinPerG, 0),
  };
  tables.set(recipe, { foods, table });
  return table;
}

function tableLine(recipe: Recipe, line: RecipeLine, foods: ReadonlyMap<string, Food>): TableLine {
  const food = foods.get(line.foodId);
  if (!food) {
    throw new Problem(
      'unknown_food',
      `${recipe.title} uses "${line.foodId}", which is not in the food table.`,
      'Add the food, or mend its name in the recipe file.',
    );
  }
  return {
    line,
    food,
    ways: waysOf(line, food),
    proteinPerG: compiledFood(food).perG[nutrientPlace('proteinG')] ?? 0,
  };
}

/**
 * The recipe's own grams win over the food's table, so that a line scales from what its file says. A line whose
 * unit the food has no portion for can still be weighed.
 */
function waysOf(line: RecipeLine, food: Food): readonly MeasureWay[] {
  try {
    return measureWays(food, line.unit, line.prep).map((way) => calibrated(way, line));
  } catch (error) {
    if (error instanceof Problem) return [{ kind: 'grams' }];
    throw error;
  }
}

function calibrated(way: MeasureWay, line: RecipeLine): MeasureWay {
  const amount = line.amount.numerator / line.amount.denominator;
  const unit = readUnit(line.unit);
  if (!(amount > 0)) return way;
  if (way.kind === 'counted') return { ...way, gEach: line.massG / amount };
  if (unit?.kind !== 'volume') return way;
  const gPerMl = line.massG / (amount * unit.ml);
  if (way.kind === 'spoons') return { kind: 'spoons', gPerTsp: gPerMl * TEASPOON_ML };
  return way.kind === 'metric_volume' ? { kind: 'metric_volume', gPerMl } : way;
}
