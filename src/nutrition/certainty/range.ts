import { labelInterval } from '../label/rounding.ts';
import type { NutrientKey } from '../nutrients.ts';
import type { MeasuredBy } from '../recipe.ts';
import type { FoodAmount } from '../totals.ts';
import { totals } from '../totals.ts';
import { CUT_TOLERANCES, MEASURE_TOLERANCES, PORTION_TOLERANCE } from './tolerances.ts';

/** A food in a mix, with how it gets into the bowl. */
export interface MeasuredAmount extends FoodAmount {
  readonly measuredBy: MeasuredBy;
  /** Relative half width of this measure when the recipe states one. */
  readonly tolerance?: number;
}

/** Two ways through the same card: as cooks do it with cups and spoons, or with everything on the scale. */
export type Way = 'cup_and_spoon' | 'weighed';

/** A figure with what it may truly be, in the nutrient's unit. */
export interface NutrientRange {
  readonly value: number;
  readonly low: number;
  /** Absent when some food has no figure: then nothing bounds it from above. */
  readonly high: number | undefined;
}

/** What share of the mix the figure is for, and whether pieces were cut (then their evenness counts too). */
export interface Part {
  readonly factor: number;
  readonly cut: boolean;
}

/**
 * The range of one nutrient in a part of a mix; absent when nobody has a figure.
 *
 * Method. Each line's mass has a relative half width: its measure and, off the scale, the household portion,
 * combined in quadrature. Each product's figure has the half width its label rounding leaves open (21 CFR
 * 101.9(c)). Lines are taken as independent, so their half widths in the nutrient add in quadrature. A batch cut
 * by count shares the whole among the pieces, so the total mass drops out; what remains is how evenly it is cut.
 * Pieces put on the scale are the same mass each, so a line that runs over also thins the others: its part is
 * taken against the total mass. Natural variation of the food itself is not in the range.
 */
export function rangeOf(
  amounts: readonly MeasuredAmount[],
  key: NutrientKey,
  way: Way,
  part: Part = { factor: 1, cut: false },
): NutrientRange | undefined {
  const total = totals(amounts).of(key);
  if (total.value === undefined) return undefined;
  const value = total.value * part.factor;
  const half = relativeHalfWidth(amounts, key, way, part.cut, total.value);
  return {
    value,
    low: Math.max(0, value * (1 - half)),
    high: total.atLeast ? undefined : value * (1 + half),
  };
}

function relativeHalfWidth(
  amounts: readonly MeasuredAmount[],
  key: NutrientKey,
  way: Way,
  cut: boolean,
  whole: number,
): number {
  if (whole <= 0) return 0;
  const massG = amounts.reduce((sum, amount) => sum + amount.massG, 0);
  const piecesWeighed = cut && way === 'weighed';
  let squares = 0;
  for (const amount of amounts) {
    const share = ((amount.food.per100g[key] ?? 0) * amount.massG) / 100 / whole;
    const massEffect = piecesWeighed ? share - amount.massG / massG : share;
    squares += (massEffect * massHalfWidth(amount, way)) ** 2 + (share * figureHalfWidth(amount, key)) ** 2;
  }
  const evenness = CUT_TOLERANCES[way === 'weighed' ? 'weighed' : 'by_eye'].share;
  return Math.sqrt(squares + (cut ? evenness ** 2 : 0));
}

/** Without a scale a line marked `weighed` is a levelled measure too. */
function massHalfWidth(amount: MeasuredAmount, way: Way): number {
  if (way === 'weighed') return MEASURE_TOLERANCES.weighed.share;
  const measuredBy = amount.measuredBy === 'weighed' ? 'levelled' : amount.measuredBy;
  const stated = amount.measuredBy === 'weighed' ? undefined : amount.tolerance;
  const measure = stated ?? MEASURE_TOLERANCES[measuredBy].share;
  const byVolume = measuredBy === 'levelled' || measuredBy === 'scooped';
  return byVolume ? Math.hypot(measure, PORTION_TOLERANCE.share) : measure;
}

/** What the rounding of a package label leaves open, as a relative half width; 0 for table foods. */
function figureHalfWidth(amount: FoodAmount, key: NutrientKey): number {
  const printed = amount.food.product?.perServing[key];
  if (printed === undefined || printed <= 0) return 0;
  const interval = labelInterval(key, printed);
  return interval ? (interval.high - interval.low) / 2 / printed : 0;
}

/** How a range lies to a wanted least or most. `unsure`: the range crosses it. */
export function meets(
  range: NutrientRange,
  bound: 'least' | 'most',
  amount: number,
): 'yes' | 'no' | 'unsure' {
  const high = range.high ?? Number.POSITIVE_INFINITY;
  if (bound === 'least') return range.low >= amount ? 'yes' : high < amount ? 'no' : 'unsure';
  return high <= amount ? 'yes' : range.low > amount ? 'no' : 'unsure';
}
