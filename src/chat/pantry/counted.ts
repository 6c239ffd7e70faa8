import {
  type PantryChange,
  recordPantryCounted,
  recordPantryTossed,
} from '../../kitchen/pantry/record-pantry.ts';
import type { Food } from '../../nutrition/food.ts';
import { Problem } from '../../nutrition/problem.ts';
import type { Answer } from '../answer.ts';
import type { Asked } from '../command.ts';
import { findFood } from '../find-food.ts';
import { slotNumber, slotText } from '../slot-number.ts';
import { deskOf, doingOf } from '../stock/desk.ts';
import { whenDone } from '../stock/when.ts';
import { boughtMass, pantryWords, tenth } from './amount.ts';

/** "counted 12 lb oats": the shelf is put right. */
export async function foodCounted(asked: Asked): Promise<Answer> {
  const { food, amount } = meant(asked);
  if (amount === undefined) throw noAmount('How much is there?', 'counted 12 lb', food);
  const change = await recordPantryCounted(deskOf(asked), { ...whatOf(asked, food), massG: amount });
  return answerOf(
    food,
    change,
    `${pantryWords(change.afterG)} counted; the ledger said ${pantryWords(change.beforeG)}.`,
  );
}

/** "tossed 2 lb raisins", "tossed all the spinach". */
export async function foodTossed(asked: Asked, note: string): Promise<Answer> {
  const { food, amount } = meant(asked);
  const massG = amount ?? (asked.slots.quantity === 'all' ? 'all' : undefined);
  if (massG === undefined) throw noAmount('How much was thrown out?', 'tossed 2 lb', food);
  const change = await recordPantryTossed(deskOf(asked), { ...whatOf(asked, food, note), massG });
  return answerOf(
    food,
    change,
    `${pantryWords(change.beforeG - change.afterG)} thrown out; ${pantryWords(change.afterG)} left.`,
  );
}

function meant(asked: Asked): { readonly food: Food; readonly amount?: number } {
  const { slots } = asked;
  const food = findFood(asked.kitchen.book, slots.ingredient ?? '');
  const said = slotNumber(slots, 'amount');
  return said === undefined
    ? { food }
    : { food, amount: boughtMass(food, said, slotText(slots, 'amount_unit') ?? '').massG };
}

function whatOf(asked: Asked, food: Food, note?: string) {
  const lot = slotText(asked.slots, 'lot');
  return {
    ...doingOf(asked, whenDone(asked, asked.slots.when), note),
    foodId: food.id,
    ...(lot === undefined ? {} : { lot }),
  };
}

const noAmount = (message: string, start: string, food: Food): Problem =>
  new Problem('needs_more', message, `Write it like "${start} ${food.name.toLowerCase()}".`);

function answerOf(food: Food, { beforeG, afterG, again }: PantryChange, what: string): Answer {
  return {
    title: again ? 'Already logged; nothing was counted twice.' : `${food.name}: ${what}`,
    sections: [],
    cautions: [],
    next: ['undo', 'what is in the pantry'].map((says) => ({ label: says, says })),
    audience: 'channel',
    data: { logged: !again, food: food.id, beforeG: tenth(beforeG), afterG: tenth(afterG) },
  };
}
