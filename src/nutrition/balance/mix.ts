import type { MeasuredAmount } from '../certainty/range.ts';
import type { Food } from '../food.ts';
import type { MeasureWay } from '../measure/measure-way.ts';
import { Problem } from '../problem.ts';
import type { Recipe, RecipeLine } from '../recipe.ts';
import { recipeTable } from '../scale/recipe-table.ts';
import { type BalanceQuestion, MOST_LINES } from './question.ts';

/** One line of the mix: what the recipe has of it at this size, and how it is measured. */
export interface MixLine {
  readonly line: RecipeLine;
  readonly food: Food;
  readonly ways: readonly MeasureWay[];
  readonly baseG: number;
}

/** The mix that is balanced: its lines at this size, and what becomes of them in a piece. */
export interface Mix {
  readonly recipe: Recipe;
  readonly lines: readonly MixLine[];
  readonly pieces: number;
  /** A piece's share of the nutrients of the mix. */
  readonly nutrientShare: number;
  /** A piece's share of the mass of the mix, as eaten. */
  readonly massShare: number;
}

/** The mix of a question at its size. Throws `bad_quantity` for a size or a recipe nobody makes. */
export function mixOf({ recipe, foods, pieces }: BalanceQuestion): Mix {
  if (!(pieces > 0 && pieces <= 100_000)) {
    throw new Problem(
      'bad_quantity',
      `${pieces} is not a number of pieces to make.`,
      'Write a number like 40.',
    );
  }
  if (recipe.lines.length > MOST_LINES) {
    throw new Problem(
      'not_possible',
      `${recipe.title} has ${recipe.lines.length} lines.`,
      `I balance up to ${MOST_LINES}.`,
    );
  }
  const factor = pieces / recipe.yieldPieces;
  const lines = recipeTable(recipe, foods)
    .lines.filter(({ line }) => line.massG > 0)
    .map(({ line, food, ways }) => ({ line, food, ways, baseG: line.massG * factor }));
  const kept = 1 - recipe.handlingLoss;
  return {
    recipe,
    lines,
    pieces,
    nutrientShare: kept / pieces,
    massShare: (kept * (1 - recipe.moistureLoss)) / pieces,
  };
}

/** The foods of a mix in these grams, one a line, with how each gets into the bowl. */
export function amountsOf(mix: Mix, grams: readonly number[]): MeasuredAmount[] {
  return mix.lines.map(({ line, food }, at) => ({
    food,
    massG: grams[at] ?? 0,
    measuredBy: line.measuredBy,
    ...(line.tolerance === undefined ? {} : { tolerance: line.tolerance }),
  }));
}
