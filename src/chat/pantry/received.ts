import { recordReceived } from '../../kitchen/pantry/record-received.ts';
import { Problem } from '../../nutrition/problem.ts';
import { readUnit } from '../../nutrition/units/unit.ts';
import type { Answer } from '../answer.ts';
import type { Asked } from '../command.ts';
import { findFood } from '../find-food.ts';
import { dollars, slotCents } from '../money.ts';
import { slotNumber, slotText } from '../slot-number.ts';
import { deskOf, doingOf } from '../stock/desk.ts';
import { whenDone } from '../stock/when.ts';
import { boughtMass, pantryWords } from './amount.ts';
import { forKitchen } from './for-kitchen.ts';

/** "received 4 jars peanut butter at 6.99 each": on the shelf, and what was paid; a price by staff is in force then. */
export async function received(asked: Asked): Promise<Answer> {
  forKitchen(asked);
  const { slots } = asked;
  const amount = slotNumber(slots, 'amount');
  if (slots.ingredient === undefined || amount === undefined) {
    throw new Problem(
      'needs_more',
      'What came, and how much?',
      'Write it like "received 4 jars peanut butter at 6.99 each".',
    );
  }
  const food = findFood(asked.kitchen.book, slots.ingredient);
  const unit = slotText(slots, 'amount_unit') ?? '';
  const { massG, assumed } = boughtMass(food, amount, unit);
  const told = slotCents(slots, 'price');
  const isEach = slots.per === 'each';
  const cents = told === undefined ? undefined : isEach ? Math.round(told * amount) : told;
  const word = readUnit(unit)?.one ?? unit;
  const price = {
    priceCents: told ?? 0,
    packageG: isEach ? massG / amount : massG,
    packageName: isEach ? word : `${amount} ${word}`.trim(),
  };
  const isPrice = told !== undefined && asked.request.asker.role === 'staff' && price.packageName !== '';
  const lot = slotText(slots, 'lot');
  const { onHandG, again, isOffList, listedG } = await recordReceived(deskOf(asked), {
    ...doingOf(asked, whenDone(asked, slots.when)),
    foodId: food.id,
    massG,
    ...(lot === undefined ? {} : { lot }),
    ...(cents === undefined ? {} : { cents }),
    ...(isPrice ? { price } : {}),
  });
  const paid = cents === undefined ? '' : `, ${dollars(cents)}`;
  return {
    title: `${again ? 'Already logged: ' : ''}${food.name}: ${pantryWords(massG)} received${lot === undefined ? '' : `, lot ${lot}`}${paid}; ${pantryWords(onHandG)} on hand.`,
    sections: [
      ...(assumed === undefined ? [] : [assumed]),
      ...(isOffList ? [`${food.name} is off the shopping list.`] : []),
      ...(listedG === undefined ? [] : [`${pantryWords(listedG)} of it are still on the shopping list.`]),
    ].map((text) => ({ kind: 'text', text })),
    cautions: ['Read the label of what came: makers change recipes, and allergens go by the package in use.'],
    next: ['undo', 'what is in the pantry', 'budget left'].map((says) => ({ label: says, says })),
    audience: 'channel',
    data: {
      logged: !again,
      food: food.id,
      massG: tenth(massG),
      onHandG: tenth(onHandG),
      cents: cents ?? null,
    },
  };
}

export const tenth = (massG: number): number => Math.round(massG * 10) / 10;
