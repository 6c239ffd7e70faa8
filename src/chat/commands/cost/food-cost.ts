import { centsOf } from '../../../nutrition/cost/cost.ts';
import type { Food } from '../../../nutrition/food.ts';
import { massOf } from '../../../nutrition/portion/mass-of.ts';
import { Problem } from '../../../nutrition/problem.ts';
import { readUnit } from '../../../nutrition/units/unit.ts';
import type { Answered, Asked } from '../../command.ts';
import { aPackage, dollars } from '../../money.ts';
import { boughtMass, pantryWords } from '../../pantry/amount.ts';
import { slotNumber, slotText } from '../../slot-number.ts';

/** "3 lb almonds cost $13.99", "price of oats": one food by its package, an amount of it, or a unit of it. */
export function foodCost(asked: Asked, food: Food): Answered {
  const { slots } = asked;
  const { price } = food;
  if (!price) {
    return told(
      `No price of ${food.name} is on file.`,
      [`Staff can say it, like "${food.name.toLowerCase()} 3.49 for 16 oz".`],
      { food: food.id, priced: false },
    );
  }
  const packageLine = `${food.name}: ${dollars(price.priceCents)} for ${aPackage(price.packageName)} (${pantryWords(price.packageG)}), section ${price.section}.`;
  const amount = slotNumber(slots, 'amount') ?? slotNumber(slots, 'quantity');
  const per = slotText(slots, 'output_unit') ?? (slots.per === undefined ? undefined : String(slots.per));
  const data = { food: food.id, priced: true, packageCents: price.priceCents, packageG: price.packageG };
  if (amount !== undefined) {
    const unit = slotText(slots, 'amount_unit') ?? '';
    const { massG, assumed } = boughtMass(food, amount, unit);
    const cents = Math.round(centsOf(food, massG) ?? 0);
    const what = `${amount}${unit === '' ? '' : ` ${readUnit(unit)?.[amount === 1 ? 'one' : 'many'] ?? unit}`} ${food.name.toLowerCase()}`;
    return told(
      `${what} (${pantryWords(massG)}) cost ${dollars(cents)}.`,
      [packageLine, ...(assumed === undefined ? [] : [assumed])],
      { ...data, massG: Math.round(massG * 10) / 10, cents },
    );
  }
  if (per !== undefined) {
    const unit = readUnit(per);
    if (!unit) {
      throw new Problem('unknown_unit', `I know no unit "${per}".`, 'Write a measure, like "oats per lb".');
    }
    const cents = centsOf(food, massOf(food, 1, unit.id).massG) ?? 0;
    return told(`${food.name} cost ${centsText(cents)} a ${unit.one}.`, [packageLine], {
      ...data,
      per: unit.id,
      perCents: Math.round(cents * 100) / 100,
    });
  }
  return told(
    packageLine,
    [`${centsText(centsOf(food, 453.592_37) ?? 0)} a lb, ${centsText(centsOf(food, 100) ?? 0)} per 100 g.`],
    data,
  );
}

/** Small sums keep a tenth of a cent: a cup of oats is 12.3 cents. */
const centsText = (cents: number): string =>
  cents >= 100 ? dollars(cents) : `${Math.round(cents * 10) / 10} cents`;

function told(title: string, lines: readonly string[], data: Record<string, unknown>): Answered {
  return {
    answer: {
      title,
      sections: lines.map((text) => ({ kind: 'text', text })),
      cautions: [],
      next: [],
      audience: 'channel',
      data,
    },
  };
}
