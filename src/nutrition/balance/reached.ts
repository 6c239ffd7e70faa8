import { type NutrientRange, rangeOf } from '../certainty/range.ts';
import { energyShares } from '../energy.ts';
import { totals } from '../totals.ts';
import { wetOverDry } from '../wet-dry.ts';
import { amountsOf, type Mix } from './mix.ts';
import type { Limit, Measure } from './question.ts';

/**
 * What one piece of a mix in these grams comes to, by the same engine that answers for any recipe.
 * `undefined` where a figure or a price is missing. A nutrient some food has no figure for is "at least" this.
 */
export function reached(mix: Mix, grams: readonly number[], measure: Measure): number | undefined {
  const amounts = amountsOf(mix, grams);
  switch (measure.kind) {
    case 'nutrient':
      return totals(amounts).times(mix.nutrientShare).of(measure.key).value;
    case 'energy_share':
      return energyShares(totals(amounts))?.[measure.of];
    case 'cost':
      return costCents(mix, grams);
    case 'wet_dry':
      return wetOverDry(
        mix.lines.map(({ food, line }, at) => ({ food, role: line.role, massG: grams[at] ?? 0 })),
      );
    case 'piece_mass':
      return totals(amounts).massG * mix.massShare;
    default:
      return measure satisfies never;
  }
}

function costCents(mix: Mix, grams: readonly number[]): number | undefined {
  let cents = 0;
  for (const [at, { food }] of mix.lines.entries()) {
    const massG = grams[at] ?? 0;
    if (massG === 0) continue;
    if (!food.price || food.price.packageG <= 0) return undefined;
    cents += (massG / food.price.packageG) * food.price.priceCents;
  }
  return cents / mix.pieces;
}

/** What cups and spoons leave open for a nutrient of one piece, cut by eye. */
export function scooped(mix: Mix, grams: readonly number[], measure: Measure): NutrientRange | undefined {
  if (measure.kind !== 'nutrient') return undefined;
  const part = { factor: mix.nutrientShare, cut: true };
  return rangeOf(amountsOf(mix, grams), measure.key, 'cup_and_spoon', part);
}

/** The figure a limit is held against: the value, or the far end of the range where it has to hold even if scooped. */
export function heldAgainst(mix: Mix, grams: readonly number[], limit: Limit): number | undefined {
  if (!limit.evenIfScooped) return reached(mix, grams, limit.measure);
  const range = scooped(mix, grams, limit.measure);
  return limit.bound === 'least' ? range?.low : range?.high;
}

/** Slack for sums of decimals, not for the kitchen: a millionth. */
const EXACT = 1e-6;

/** By what share of its amount a limit is missed; 0 when it holds, infinite when nobody can tell. */
export function missedBy(mix: Mix, grams: readonly number[], limit: Limit): number {
  const value = heldAgainst(mix, grams, limit);
  if (value === undefined) return limit.bound === 'least' && limit.amount <= 0 ? 0 : Number.POSITIVE_INFINITY;
  const short = limit.bound === 'least' ? limit.amount - value : value - limit.amount;
  const share = short / Math.max(Math.abs(limit.amount), 1e-9);
  return share <= EXACT ? 0 : share;
}
