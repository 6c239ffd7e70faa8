import { compiledFood, hasFigure, nutrientPlace } from '../compiled-food.ts';
import type { Food } from '../food.ts';
import type { NutrientKey } from '../nutrients.ts';
import { Problem } from '../problem.ts';
import { isWet } from '../wet-dry.ts';
import type { Mix, MixLine } from './mix.ts';
import type { Limit, Measure } from './question.ts';

/** A limit as a row over the grams of the lines: least <= sum(perG * grams) <= most. */
export interface LinearRow {
  readonly perG: readonly number[];
  readonly least: number;
  readonly most: number;
  /** What one share of the limit's amount is in this row, for measuring how far it gives way. */
  readonly scale: number;
}

/**
 * The row of a limit whose amount is `amount` (which may be stricter than asked, to leave room for rounding).
 * Throws `not_possible` when a figure or a price that the limit needs is missing.
 */
export function linearRow(mix: Mix, limit: Limit, amount: number): LinearRow {
  refuseUnknown(mix, limit);
  const { perG, target } = formOf(mix, limit.measure, amount);
  const scale = Math.max(Math.abs(target), magnitude(mix, perG) * 1e-3, 1e-9);
  return {
    perG,
    least: limit.bound === 'least' ? target : Number.NEGATIVE_INFINITY,
    most: limit.bound === 'most' ? target : Number.POSITIVE_INFINITY,
    scale,
  };
}

const magnitude = (mix: Mix, perG: readonly number[]): number =>
  mix.lines.reduce((sum, { baseG }, at) => sum + Math.abs(perG[at] ?? 0) * baseG, 0);

/** Figures of a piece as sums over grams. A ratio becomes a difference that must not be below, or above, zero. */
function formOf(mix: Mix, measure: Measure, amount: number): { perG: number[]; target: number } {
  const of = (perG: (line: MixLine) => number) => mix.lines.map(perG);
  switch (measure.kind) {
    case 'nutrient':
      return { perG: of(({ food }) => figurePerG(food, measure.key) * mix.nutrientShare), target: amount };
    case 'energy_share':
      return { perG: of(({ food }) => sharePerG(food, measure.of, amount)), target: 0 };
    case 'cost':
      return { perG: of(({ food }) => centsPerG(food) / mix.pieces), target: amount };
    case 'wet_dry':
      return { perG: of(({ food, line }) => (isWet(food, line.role) ? 1 : -amount)), target: 0 };
    case 'piece_mass':
      return { perG: of(() => mix.massShare), target: amount };
    default:
      return measure satisfies never;
  }
}

/** Figure per gram in the nutrient's unit; 0 where unknown, which can only understate a "least". */
export const figurePerG = (food: Food, key: NutrientKey): number =>
  compiledFood(food).perG[nutrientPlace(key)] ?? 0;

/** Package price per gram in cents; 0 without a price, which `linearRow` refuses beforehand. */
export const centsPerG = ({ price }: Food): number => (price ? price.priceCents / price.packageG : 0);

/** Energy of the part less its share of all energy, 4-4-9 as in `energyShares`. */
function sharePerG(food: Food, of: 'protein' | 'carbohydrate' | 'fat', share: number): number {
  const kcal = {
    protein: 4 * figurePerG(food, 'proteinG'),
    carbohydrate: 4 * figurePerG(food, 'carbohydrateG'),
    fat: 9 * figurePerG(food, 'fatG'),
  };
  return kcal[of] - share * (kcal.protein + kcal.carbohydrate + kcal.fat);
}

function refuseUnknown(mix: Mix, { measure, bound }: Limit): void {
  const foods = mix.lines.map(({ food }) => food);
  if (measure.kind === 'cost')
    refuse(
      'price',
      foods.filter(({ price }) => !price || price.packageG <= 0),
    );
  if (measure.kind === 'nutrient' && bound === 'most')
    refuse('figure', without(foods, [measure.key]), measure.key);
  if (measure.kind === 'energy_share')
    refuse('figure', without(foods, ['proteinG', 'carbohydrateG', 'fatG']), 'proteinG');
}

const without = (foods: readonly Food[], keys: readonly NutrientKey[]): Food[] =>
  foods.filter((food) => keys.some((key) => !hasFigure(food, key)));

function refuse(what: 'price' | 'figure', foods: readonly Food[], key?: NutrientKey): void {
  if (foods.length === 0) return;
  const names = [...new Set(foods.map(({ name }) => name))].join(', ');
  throw new Problem(
    'not_possible',
    what === 'price'
      ? `No price is known for ${names}, so a cost cannot be held.`
      : `No ${(key ?? '').replace(/(?:G|Mg|Mcg|Kcal)$/, '')} figure is known for ${names}, so that limit cannot be promised.`,
    what === 'price'
      ? 'Add the package price to the kitchen folder, or ask without a cost.'
      : 'Add the figure from its label, or ask for another nutrient.',
  );
}
