import type { Food } from '../food.ts';
import type { KitchenMeasure } from '../measure/kitchen-measure.ts';
import type { Recipe } from '../recipe.ts';
import { type BatchSize, batchSize } from './batch-size.ts';
import { measureLines } from './measure-lines.ts';
import { type RecipeTable, recipeTable } from './recipe-table.ts';
import { type Slabs, slabsFor } from './slabs.ts';
import type { ScaleOptions, ScaleTarget } from './target.ts';

export interface ScaledLine {
  readonly foodId: string;
  readonly food: Food;
  readonly optional: boolean;
  readonly prep?: string;
  /** The whole batch. */
  readonly measure: KitchenMeasure;
  /** One of the equal mixes, when the bowl does not take the batch at once. */
  readonly eachMix?: KitchenMeasure;
}

/** A recipe at another size, in exact grams and in what a person can measure. */
export interface ScaledRecipe {
  readonly recipe: Recipe;
  readonly factor: number;
  readonly pieces: number;
  readonly lines: readonly ScaledLine[];
  /** Grams of mix as measured, before the oven; `exactRawG` before rounding to measures. */
  readonly rawG: number;
  readonly exactRawG: number;
  /** Grams of one piece as measured and after losses; `exactPieceG` before rounding to measures. */
  readonly pieceG: number;
  readonly exactPieceG: number;
  /** Protein of a piece as measured over exact, less 1; undefined when no line has a protein figure. */
  readonly proteinDeviation: number | undefined;
  readonly mixes: { readonly count: number; readonly eachG: number };
  readonly slabs?: Slabs;
  readonly ingredientLeftG?: number;
}

/**
 * Scales a recipe. Every line is within 3 % of exact after rounding to kitchen measures, and protein per piece
 * within 1 %, for the batch measured at once as for the batch measured mix by mix.
 * @throws Problem for a size no kitchen makes, an ingredient the recipe lacks, a pan for what needs none.
 * @example scaleRecipe(oatBar, foods, { kind: 'pieces', pieces: 40 }).factor // 2.5 of a recipe for 16
 */
export function scaleRecipe(
  recipe: Recipe,
  foods: ReadonlyMap<string, Food>,
  target: ScaleTarget,
  options: ScaleOptions = {},
): ScaledRecipe {
  const table = recipeTable(recipe, foods);
  const size = batchSize(recipe, table, target, options);
  const exactRawG = table.rawG * size.factor;
  const mixes = mixesFor(exactRawG, recipe.bowlG);
  const whole = measureLines(table, size.factor);
  const each = mixes === 1 ? undefined : measureLines(table, size.factor / mixes);
  const used = each ?? whole;
  const times = each ? mixes : 1;
  const rawG = used.rawG * times;
  const kept = table.finishedG / table.rawG;
  const slabs = panSlabs(recipe, table, size, target, options);
  return {
    recipe,
    factor: size.factor,
    pieces: size.pieces,
    lines: linesOf(table, whole.measures, each?.measures),
    rawG,
    exactRawG,
    pieceG: (rawG * kept) / size.pieces,
    exactPieceG: (exactRawG * kept) / size.pieces,
    proteinDeviation: used.proteinDeviation,
    mixes: { count: mixes, eachG: rawG / mixes },
    ...(slabs ? { slabs } : {}),
    ...(size.ingredientLeftG === undefined ? {} : { ingredientLeftG: size.ingredientLeftG }),
  };
}

/** Equal mixes that fit the bowl; one when the bowl is not known. A bowl takes 2 % more than it is said to. */
export const mixesFor = (rawG: number, bowlG: number | undefined): number =>
  bowlG === undefined || !(bowlG > 0) ? 1 : Math.max(1, Math.ceil(rawG / (bowlG * 1.02)));

function linesOf(
  table: RecipeTable,
  whole: readonly KitchenMeasure[],
  each: readonly KitchenMeasure[] | undefined,
): ScaledLine[] {
  const lines: ScaledLine[] = [];
  for (let at = 0; at < table.lines.length; at++) {
    const entry = table.lines[at];
    const measure = whole[at];
    if (!entry || !measure) continue;
    const eachMix = each?.[at];
    const { line, food } = entry;
    lines.push({
      foodId: line.foodId,
      food,
      optional: line.optional,
      measure,
      ...(line.prep === undefined ? {} : { prep: line.prep }),
      ...(eachMix ? { eachMix } : {}),
    });
  }
  return lines;
}

function panSlabs(
  recipe: Recipe,
  table: RecipeTable,
  size: BatchSize,
  target: ScaleTarget,
  options: ScaleOptions,
): Slabs | undefined {
  if (target.kind === 'pan') return slabsFor(recipe, target.to, target.count, size.pieces, []);
  if (!recipe.pan || table.rawG === 0) return undefined;
  return slabsFor(recipe, recipe.pan, size.factor, size.pieces, options.pans ?? []);
}
