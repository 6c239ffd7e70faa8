import { recordPrice } from '../../../kitchen/pantry/record-pantry.ts';
import type { Food } from '../../../nutrition/food.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked } from '../../command.ts';
import { aPackage, dollars } from '../../money.ts';
import { boughtMass, pantryWords } from '../../pantry/amount.ts';
import { slotNumber, slotText } from '../../slot-number.ts';
import { deskOf, doingOf } from '../../stock/desk.ts';

/** "oats 3.49 for 42 oz": the price from now on; without a package, of the package on file. Staff say prices. */
export async function statePrice(asked: Asked, food: Food, cents: number): Promise<Answered> {
  if (asked.request.asker.role !== 'staff') {
    throw new Problem('not_allowed', 'Prices are told by staff.', 'Give the invoice to the kitchen staff.');
  }
  const { packageG, packageName, assumed } = packageMeant(asked, food);
  const price = { foodId: food.id, priceCents: cents, packageG, packageName };
  const { again } = await recordPrice(deskOf(asked), { ...doingOf(asked, asked.request.nowMs), price });
  const was = food.price;
  const now = dollars((cents / packageG) * 453.592_37);
  const before = was && was.packageG > 0 ? dollars((was.priceCents / was.packageG) * 453.592_37) : undefined;
  return {
    answer: {
      title: `${again ? 'Already noted: ' : ''}${food.name}: ${dollars(cents)} for ${aPackage(packageName)} (${pantryWords(packageG)}), ${now} a lb${before === undefined ? '' : `; it was ${before} a lb`}.`,
      sections: [
        ...(assumed === undefined ? [] : [{ kind: 'text' as const, text: assumed }]),
        { kind: 'text', text: 'Costs go by it from now on, until another price is told.' },
      ],
      cautions: [],
      next: ['undo'].map((says) => ({ label: says, says })),
      audience: 'channel',
      data: {
        noted: !again,
        food: food.id,
        priceCents: cents,
        packageG: Math.round(packageG * 10) / 10,
        packageName,
      },
    },
  };
}

function packageMeant(asked: Asked, food: Food): { packageG: number; packageName: string; assumed?: string } {
  const amount = slotNumber(asked.slots, 'amount');
  const unit = slotText(asked.slots, 'amount_unit');
  if (amount !== undefined) {
    if (!(amount > 0)) {
      throw new Problem(
        'bad_quantity',
        'A package holds more than 0.',
        'Write it like "oats 3.49 for 42 oz".',
      );
    }
    const { massG, assumed } = boughtMass(food, amount, unit ?? '');
    const packageName = slotText(asked.slots, 'pack') ?? `${amount}`;
    return { packageG: massG, packageName, ...(assumed === undefined ? {} : { assumed }) };
  }
  if (food.price) return { packageG: food.price.packageG, packageName: food.price.packageName };
  throw new Problem(
    'needs_more',
    `How much ${food.name.toLowerCase()} is that for?`,
    `Write the package too, like "${food.name.toLowerCase()} 3.49 for 16 oz".`,
  );
}
