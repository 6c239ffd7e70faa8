import type { PantryUse } from '../../kitchen/pantry/uses.ts';
import type { Answer } from '../answer.ts';
import type { Asked } from '../command.ts';
import { pantryWords, tenth } from './amount.ts';

/** The answer to a batch with what it took from the pantry; more than was on record is told. */
export function withUses(asked: Asked, answer: Answer, uses: readonly PantryUse[]): Answer {
  if (uses.length === 0) return answer;
  const items = uses.map(({ foodId, usedG, leftG, shortG }) => {
    const name = asked.kitchen.book.foods.get(foodId)?.name ?? foodId;
    const short = shortG > 0 ? `; ${pantryWords(shortG)} more went in than was on record, count it` : '';
    return `${name}: ${pantryWords(usedG)} used, ${pantryWords(leftG)} left${short}`;
  });
  return {
    ...answer,
    sections: [...answer.sections, { kind: 'list', heading: 'From the pantry', items }],
    data: {
      ...answer.data,
      pantry: uses.map(({ foodId, usedG, leftG, shortG }) => ({
        food: foodId,
        usedG: tenth(usedG),
        leftG: tenth(leftG),
        shortG: tenth(shortG),
      })),
    },
  };
}
