import type { Food } from '../food.ts';
import type { NutrientKey } from '../nutrients.ts';
import { centsPerG, figurePerG } from './linear.ts';
import type { Mix } from './mix.ts';

/** The ingredient a gram of which, or a cent of which, moves a nutrient most. */
export interface Mover {
  readonly food: Food;
  /** In the nutrient's unit, per gram of the ingredient or per cent of its price. */
  readonly amount: number;
}

export interface Sensitivity {
  readonly key: NutrientKey;
  readonly perGram?: Mover;
  /** Absent when no ingredient that holds the nutrient has a price. */
  readonly perCent?: Mover;
}

/**
 * Which ingredient of a mix moves a nutrient most, by weight and by money.
 * @example sensitivity(oatBars, 'proteinG').perGram // whey: 0.774 g protein a gram
 */
export function sensitivity(mix: Mix, key: NutrientKey): Sensitivity {
  const movers = mix.lines.map(({ food }) => ({ food, amount: figurePerG(food, key) }));
  const priced = mix.lines
    .filter(({ food }) => centsPerG(food) > 0)
    .map(({ food }) => ({ food, amount: figurePerG(food, key) / centsPerG(food) }));
  const perGram = most(movers);
  const perCent = most(priced);
  return { key, ...(perGram ? { perGram } : {}), ...(perCent ? { perCent } : {}) };
}

const most = (movers: readonly Mover[]): Mover | undefined =>
  movers
    .filter(({ amount }) => amount > 0)
    .reduce<Mover | undefined>(
      (best, mover) => (best && best.amount >= mover.amount ? best : mover),
      undefined,
    );
