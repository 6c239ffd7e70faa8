import { loadFoods } from '../../src/book/load-foods.ts';
import { atwaterCheck } from '../../src/nutrition/energy.ts';
import type { Food } from '../../src/nutrition/food.ts';
import type { NutrientKey } from '../../src/nutrition/nutrients.ts';
import { massOf } from '../../src/nutrition/portion/mass-of.ts';
import { type FoodAmount, totals } from '../../src/nutrition/totals.ts';
import { PORTION_SAMPLES, RECIPE_SAMPLES } from './samples.ts';
import type { OutsideQuantity } from './tolerances.ts';

/** One figure of ours beside one of theirs. */
export interface Deviation {
  readonly quantity: OutsideQuantity;
  readonly sample: string;
  readonly theirs: number;
  readonly ours: number;
  /** Distance as a share of the published figure. */
  readonly share: number;
}

/** All comparisons, and the samples nothing could be compared for. */
export interface Comparison {
  readonly deviations: readonly Deviation[];
  readonly skipped: readonly string[];
}

const QUANTITY_WORDS: { readonly [K in NutrientKey]?: string } = {
  energyKcal: 'energy',
  proteinG: 'protein',
  fatG: 'fat',
  carbohydrateG: 'carbohydrate',
  calciumMg: 'calcium',
  sodiumMg: 'sodium',
};

/** Reads the food table of this repository and works out every sample with it. */
export function compareAll(folder: string): Comparison {
  const foods = [...loadFoods([folder]).foods.values()];
  const byNdbNo = new Map(
    foods.flatMap((food) => (food.source.kind === 'usda_sr28' ? [[food.source.ndbNo, food] as const] : [])),
  );
  const parts = [...portions(byNdbNo), ...recipes(byNdbNo), ...ownFactors(foods)];
  return {
    deviations: parts.flatMap((part) => (typeof part === 'string' ? [] : [part])),
    skipped: parts.filter((part) => typeof part === 'string'),
  };
}

type Part = Deviation | string;

function portions(foods: ReadonlyMap<string, Food>): Part[] {
  return PORTION_SAMPLES.flatMap(({ ndbNo, amount, unit, figures }) => {
    const name = `${ndbNo}, ${amount} ${unit}`;
    const mix = amountsOf([{ ndbNo, amount, unit }], foods);
    return mix ? figuresBeside('portion', name, mix, 1, figures) : [name];
  });
}

function recipes(foods: ReadonlyMap<string, Food>): Part[] {
  return RECIPE_SAMPLES.flatMap(({ source, servings, lines, figures }) => {
    const mix = amountsOf(lines, foods);
    return mix ? figuresBeside('recipe', source, mix, 1 / servings, figures) : [source];
  });
}

function amountsOf(
  lines: readonly { ndbNo: string; amount: number; unit: string }[],
  foods: ReadonlyMap<string, Food>,
): FoodAmount[] | undefined {
  const amounts = lines.flatMap(({ ndbNo, amount, unit }) => {
    const food = foods.get(ndbNo);
    return food ? [{ food, massG: massOf(food, amount, unit).massG }] : [];
  });
  return amounts.length === lines.length ? amounts : undefined;
}

function figuresBeside(
  kind: 'portion' | 'recipe',
  sample: string,
  mix: readonly FoodAmount[],
  factor: number,
  figures: { readonly [K in NutrientKey]?: number },
): Part[] {
  const sum = totals(mix).times(factor);
  return (Object.entries(figures) as [NutrientKey, number][]).map(([key, theirs]) => {
    const ours = sum.of(key).value;
    if (ours === undefined) return `${sample}: ${key}`;
    return deviation(`${kind} ${QUANTITY_WORDS[key]}` as OutsideQuantity, `${sample}: ${key}`, theirs, ours);
  });
}

/** Foods whose stated energy USDA worked from other than the three factors; each was looked at. */
export const ENERGY_BY_OTHER_MEANS: ReadonlySet<string> = new Set(['01226', '08122']);

function ownFactors(foods: readonly Food[]): Part[] {
  return foods.flatMap((food) => {
    const check = atwaterCheck(food);
    const ndbNo = food.source.kind === 'usda_sr28' ? food.source.ndbNo : '';
    // Below 50 kcal the rounding to a whole kcal is more than 1 % by itself.
    const isComparable = check?.basis === 'own_factors' && check.statedKcal >= 50;
    if (!check || !isComparable || ENERGY_BY_OTHER_MEANS.has(ndbNo)) return [];
    return [deviation('own factors energy', food.id, check.statedKcal, check.workedKcal)];
  });
}

const deviation = (quantity: OutsideQuantity, sample: string, theirs: number, ours: number): Deviation => ({
  quantity,
  sample,
  theirs,
  ours,
  share: Math.abs(ours - theirs) / theirs,
});

/** The spread of one quantity's deviations, as shares. */
export interface Spread {
  readonly n: number;
  readonly mean: number;
  readonly p50: number;
  readonly p90: number;
  readonly max: number;
}

/** Count, mean, median, 90th percentile and largest of the deviations of one quantity. */
export const spreadOf = (deviations: readonly Deviation[], quantity: OutsideQuantity): Spread =>
  spreadOfShares(deviations.filter((one) => one.quantity === quantity).map((one) => one.share));

/** The same of any shares. */
export function spreadOfShares(given: readonly number[]): Spread {
  const shares = [...given].sort((a, b) => a - b);
  const at = (quantile: number): number => shares[Math.ceil(quantile * shares.length) - 1] ?? Number.NaN;
  const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
  return { n: shares.length, mean, p50: at(0.5), p90: at(0.9), max: at(1) };
}
