import type { Need } from '../../../nutrition/allergens.ts';
import type { Food } from '../../../nutrition/food.ts';
import { massOf } from '../../../nutrition/portion/mass-of.ts';
import { cupG } from '../../../nutrition/swap/amount.ts';
import { findSwaps, type SwapQuestion } from '../../../nutrition/swap/find-swaps.ts';
import { lineOf } from '../../../nutrition/swap/general-swap.ts';
import type { Answered, Asked } from '../../command.ts';
import { findFood } from '../../find-food.ts';
import { offersAnswer } from './offers.ts';
import { replacementAnswer } from './replacement.ts';

/** Swaps for one ingredient where no recipe is known: the ratio, the effect, the allergens of the swap. */
export async function generalAnswer(asked: Asked, food: Food, needs: readonly Need[]): Promise<Answered> {
  const { foods, recipes, settings } = asked.kitchen.book;
  const question: SwapQuestion = {
    recipe: lineOf(food, amountOf(asked, food)),
    foods,
    recipes,
    needs,
    without: [food],
    list: settings.allergenList,
  };
  const answer =
    asked.slots.replacement === undefined
      ? offersAnswer(asked, question, findSwaps(question))
      : replacementAnswer(asked, question, findFood(asked.kitchen.book, asked.slots.replacement));
  const usedIn = [...recipes.values()].filter((r) => r.lines.some((l) => l.foodId === food.id)).slice(0, 3);
  return {
    answer: {
      ...answer,
      next: usedIn.map((r) => ({ label: `in ${r.title}`, says: `out of ${food.name} in ${r.title}` })),
      data: { ...answer.data, recipe: null, ingredient: food.id },
    },
    conversation: { ...asked.conversation, last: { intent: 'swap', slots: asked.slots } },
  };
}

/** What was said, else a cup, else 100 g. */
function amountOf(asked: Asked, food: Food): number {
  const { amount, amount_unit: unit } = asked.slots;
  if (typeof amount === 'number' && amount > 0 && typeof unit === 'string')
    return massOf(food, amount, unit).massG;
  return cupG(food) ?? 100;
}
