import type { LimitReached } from '../../../nutrition/balance/balance.ts';
import type { Limit, Measure } from '../../../nutrition/balance/question.ts';
import { amountWords, nutrientName, rangeWords } from '../macros/figure-words.ts';

/** Whether a measure tells calories, which not everybody may see. */
export const isEnergy = (measure: Measure): boolean =>
  measure.kind === 'nutrient' && measure.key === 'energyKcal';

/** A limit in one phrase: "at least 20 g protein", "at most 60 cents". */
export function limitWords({ measure, bound, amount, evenIfScooped }: Limit): string {
  const way = bound === 'least' ? 'at least' : 'at most';
  return `${way} ${valueWords(amount, measure)}${evenIfScooped ? ' even if scooped' : ''}`;
}

/** A figure of a measure in words: "20 g protein", "31 % of energy from protein", "58 cents", "62 g a piece". */
export function valueWords(value: number, measure: Measure): string {
  switch (measure.kind) {
    case 'nutrient': {
      const figure = measure.key === 'energyKcal' ? `${exactly(value, 0)} kcal` : tenths(value, measure.key);
      return measure.key === 'energyKcal' ? figure : `${figure} ${nutrientName(measure.key)}`;
    }
    case 'energy_share':
      return `${exactly(value * 100, 1)} % of energy from ${measure.of}`;
    case 'cost':
      return `${exactly(value, 1)} cents`;
    case 'wet_dry':
      return `${exactly(value, 2)} wet over dry`;
    case 'piece_mass':
      return `${exactly(value, 0)} g a piece`;
    default:
      return measure satisfies never;
  }
}

/** Beside a limit a figure is told to a tenth, so that 19.9 does not read as 20. */
const tenths = (value: number, key: Parameters<typeof amountWords>[1]): string =>
  value >= 10 && value < 100
    ? `${exactly(value, 1)} ${amountWords(0, key).split(' ')[1]}`
    : amountWords(value, key);

const exactly = (value: number, places: number): string => Number(value.toFixed(places)).toString();

/** One line a limit: what it is now, what it was, how sure, and whether it decides the mix. */
export function reachedLine({ limit, before, after, range, binds }: LimitReached): string {
  const { measure } = limit;
  const was = before === undefined ? '' : ` (was ${valueWords(before, measure)})`;
  const now = after === undefined ? 'not known' : valueWords(after, measure);
  const key = measure.kind === 'nutrient' ? measure.key : undefined;
  const cups =
    range && key
      ? `; ${rangeWords({ value: after ?? 0, low: range.low, high: range.high }, key)} by cup and spoon`
      : '';
  const words = limitWords(limit);
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}: ${now}${was}${cups}${binds ? '. This one decides the mix' : ''}.`;
}
