import { amountText } from '../../../nutrition/measure/amount-text.ts';
import { ouncesText } from '../../../nutrition/measure/kitchen-measure.ts';
import { guideOunces, OUNCE_G } from '../../../nutrition/measure/published-rounding.ts';
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
        volumeMeasure((amount * unit.ml) / TEASPOON_ML, 0.03)?.text ??
        `${amountText(amount)} ${unitName(unit, amount)}`
      );
    }
    case 'mass': {
      if (unit.id !== 'oz' && unit.id !== 'lb') return `${gramsText(amount * unit.g)} g`;
      const ounces = (amount * unit.g) / OUNCE_G;
      const guided = guideOunces(ounces);
      return ouncesText(
        guided > 0 && Math.abs(guided / ounces - 1) <= 0.03 ? guided : Math.round(ounces * 100) / 100,
      );
    }
    case 'food_word':
      return `${amountText(amount)} ${unitName(unit, amount)}`;
    default:
      return unit satisfies never;
  }
}
