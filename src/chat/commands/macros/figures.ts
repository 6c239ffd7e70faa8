import { type NutrientRange, rangeOf } from '../../../nutrition/certainty/range.ts';
import type { Food } from '../../../nutrition/food.ts';
import type { NutrientKey } from '../../../nutrition/nutrients.ts';
import { type Totals, totals } from '../../../nutrition/totals.ts';
import type { Basis } from './basis.ts';
import type { Subject } from './subject.ts';

/** One nutrient of the asked part, with its range both ways. */
export interface Figure {
  readonly key: NutrientKey;
  readonly value: number | undefined;
  readonly atLeast: boolean;
  readonly missing: readonly Food[];
  readonly byCup?: NutrientRange;
  readonly weighed?: NutrientRange;
}

/** The asked part of a subject as totals. */
export const partOf = (subject: Subject, basis: Basis): Totals => totals(subject.amounts).times(basis.factor);

/** The figures of the asked part, in the order of `keys`. */
export function figuresOf(subject: Subject, basis: Basis, keys: readonly NutrientKey[]): Figure[] {
  const part = partOf(subject, basis);
  const share = { factor: basis.factor, cut: basis.cut };
  return keys.map((key) => {
    const byCup = rangeOf(subject.amounts, key, 'cup_and_spoon', share);
    const weighed = rangeOf(subject.amounts, key, 'weighed', share);
    return { ...part.of(key), ...(byCup && { byCup }), ...(weighed && { weighed }) };
  });
}

/** The same figures for machines, to a thousandth; a nutrient nobody has a figure for is left out. */
export function figureData(figures: readonly Figure[]): Record<string, unknown> {
  const known = figures.filter((figure) => figure.value !== undefined);
  return {
    ...Object.fromEntries(known.map(({ key, value }) => [key, thousandth(value)])),
    ranges: Object.fromEntries(
      known.map(({ key, byCup, weighed }) => [key, { byCup: endsOf(byCup), weighed: endsOf(weighed) }]),
    ),
    atLeast: Object.fromEntries(
      figures.filter((f) => f.atLeast).map(({ key, missing }) => [key, missing.map((food) => food.id)]),
    ),
    notKnown: figures.filter((figure) => figure.value === undefined).map((figure) => figure.key),
  };
}

const endsOf = (range: NutrientRange | undefined) =>
  range && { low: thousandth(range.low), ...(range.high !== undefined && { high: thousandth(range.high) }) };

export const thousandth = (value: number | undefined): number | undefined =>
  value === undefined ? undefined : Math.round(value * 1000) / 1000;
