import { sumG } from '../../kitchen/pantry/uses.ts';
import type { Answer } from '../answer.ts';
import type { Asked } from '../command.ts';
import { findFood } from '../find-food.ts';
import { deskOf } from '../stock/desk.ts';
import { pantryWords, tenth } from './amount.ts';
import { forKitchen } from './for-kitchen.ts';

/** "how much oats left": one food by lots. */
export async function foodOnHand(asked: Asked): Promise<Answer> {
  forKitchen(asked);
  const food = findFood(asked.kitchen.book, asked.slots.ingredient ?? '');
  const { ledger } = deskOf(asked);
  const held = (await ledger.pantry()).filter(({ foodId }) => foodId === food.id);
  const isKnown = held.length > 0 || (await ledger.pantryFoods()).has(food.id);
  const lots = held.filter(({ lot }) => lot !== undefined);
  return answerOf(
    held.length > 0
      ? `${food.name}: ${pantryWords(sumG(held))} on hand.`
      : isKnown
        ? `No ${food.name.toLowerCase()} on hand.`
        : `Nobody has told me of any ${food.name.toLowerCase()} in the pantry.`,
    lots.map(({ lot, massG }) => `Lot ${lot}: ${pantryWords(massG)}`),
    { food: food.id, known: isKnown, onHandG: isKnown ? tenth(sumG(held)) : null },
  );
}

/** "what is in the pantry": every food on the shelf. */
export async function shelf(asked: Asked): Promise<Answer> {
  forKitchen(asked);
  const { ledger, book } = deskOf(asked);
  const held = await ledger.pantry();
  const foods = [...new Set(held.map(({ foodId }) => foodId))].map((id) => ({
    id,
    name: book.foods.get(id)?.name ?? id,
    massG: sumG(held.filter(({ foodId }) => foodId === id)),
  }));
  foods.sort((a, b) => a.name.localeCompare(b.name, 'en'));
  return answerOf(
    foods.length === 0
      ? 'The pantry has nothing on record.'
      : `${foods.length} ${foods.length === 1 ? 'food' : 'foods'} in the pantry.`,
    foods.map(({ name, massG }) => `${name}: ${pantryWords(massG)}`),
    { foods: foods.map(({ id, massG }) => ({ food: id, onHandG: tenth(massG) })) },
  );
}

function answerOf(title: string, items: readonly string[], data: Record<string, unknown>): Answer {
  return {
    title,
    sections: [
      ...(items.length > 0 ? [{ kind: 'list' as const, items }] : []),
      {
        kind: 'text',
        text: 'By what was logged: received and counted, less what batches took and what was thrown out.',
      },
    ],
    cautions: [],
    next: ['received 4 jars peanut butter', 'counted 12 lb oats'].map((says) => ({ label: says, says })),
    audience: 'channel',
    data,
  };
}
