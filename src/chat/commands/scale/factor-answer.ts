import { amountText } from '../../../nutrition/measure/amount-text.ts';
import { LINE_TOLERANCE, ouncesText } from '../../../nutrition/measure/kitchen-measure.ts';
import {
  afrsPounds,
  guideOunces,
  guideTeaspoons,
  OUNCE_G,
} from '../../../nutrition/measure/published-rounding.ts';
import { volumeMeasure } from '../../../nutrition/measure/volume-measure.ts';
import { Problem } from '../../../nutrition/problem.ts';
import { MOST_PIECES } from '../../../nutrition/scale/target.ts';
import { readUnit, type Unit, unitName } from '../../../nutrition/units/unit.ts';
import { TEASPOON_ML } from '../../../nutrition/units/unit-table.ts';
import type { Answer } from '../../answer.ts';
import { slotNumber, slotText } from '../../slot-number.ts';
import type { Slots } from '../../slots.ts';
import { factorText, gramsText } from './batch-words.ts';

/** A recipe this kitchen does not keep: "makes 24, need 60" is a factor, and an amount of it is scaled along. */
export function factorAnswer(slots: Slots): Answer | undefined {
  const baseYield = slotNumber(slots, 'base_yield');
  const wanted = slotNumber(slots, 'quantity');
  if (baseYield === undefined || wanted === undefined) return undefined;
  for (const pieces of [baseYield, wanted]) {
    if (pieces > 0 && pieces <= MOST_PIECES) continue;
    throw new Problem(
      'bad_quantity',
      `${pieces} is not a number of pieces.`,
      'Write it like "recipe makes 24, need 60".',
    );
  }
  const factor = wanted / baseYield;
  const amount = slotNumber(slots, 'amount');
  const unit = readUnit(slotText(slots, 'amount_unit') ?? '');
  const scaled = amount === undefined || !unit ? undefined : timesText(amount * factor, unit);
  const food = slotText(slots, 'ingredient');
  return {
    title: scaled
      ? `${scaled}${food ? ` ${food}` : ''}: x ${factorText(factor)}`
      : `x ${factorText(factor)}: multiply every ingredient by it`,
    sections: [
      {
        kind: 'text',
        text: `${factorText(wanted)} wanted over ${factorText(baseYield)} in the recipe is ${factorText(factor)}. Oven temperature stays; pans round up to whole ones.`,
      },
    ],
    cautions: [],
    next: [],
    audience: 'channel',
    data: { factor, baseYield, pieces: wanted, ...(scaled ? { measure: scaled } : {}) },
  };
}

/** An amount as a cook measures it: cups and spoons, pounds and ounces by the published guide, grams. */
export function timesText(amount: number, unit: Unit): string {
  switch (unit.kind) {
    case 'volume': {
      if (unit.id === 'ml' || unit.id === 'l') return `${factorText(amount)} ${unit.one}`;
      return (
        spoonsText((amount * unit.ml) / TEASPOON_ML) ?? `${amountText(amount)} ${unitName(unit, amount)}`
      );
    }
    case 'mass': {
      if (unit.id !== 'oz' && unit.id !== 'lb') return `${gramsText(amount * unit.g)} g`;
      return poundsText((amount * unit.g) / OUNCE_G);
    }
    case 'food_word':
      return `${amountText(amount)} ${unitName(unit, amount)}`;
    default:
      return unit satisfies never;
  }
}

/** By the published guide where that stays within 3 %, else the handiest measure that does. */
function spoonsText(tsp: number): string | undefined {
  const guided = guideTeaspoons(tsp);
  const near = guided > 0 && Math.abs(guided / tsp - 1) <= LINE_TOLERANCE ? guided : undefined;
  return (near && volumeMeasure(near, 1e-6)?.text) || volumeMeasure(tsp, LINE_TOLERANCE)?.text;
}

/** From a pound up by the Armed Forces bands, below by the guide; to the hundredth where neither comes near. */
function poundsText(ounces: number): string {
  const { pounds, ounces: rest } = afrsPounds(ounces / 16);
  const rounded = ounces >= 16 ? pounds * 16 + rest : guideOunces(ounces);
  const near = rounded > 0 && Math.abs(rounded / ounces - 1) <= LINE_TOLERANCE;
  return near ? ouncesText(rounded) : `${Number(ounces.toPrecision(3))} oz`;
}
