import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked, Command } from '../../command.ts';
import { findFood } from '../../find-food.ts';
import { slotCents } from '../../money.ts';
import { withQuestion } from '../../stock/merged.ts';
import { askWhichRecipe, isSeveral, recipesMeant } from '../../which-recipe.ts';
import { budgetAnswer } from './budget.ts';
import { compareAnswer } from './compare.ts';
import { foodCost } from './food-cost.ts';
import { gamesCost } from './games-cost.ts';
import { costHead } from './head.ts';
import { recipeCostAnswer } from './recipe-cost.ts';
import { statePrice } from './state-price.ts';
import { wasteAnswer } from './waste.ts';

/** What things cost by the prices of their packages, and the prices themselves. */
export const cost: Command = {
  ...costHead,
  answers: (asked) => answer(withQuestion(asked)),
};

async function answer(asked: Asked): Promise<Answered> {
  const { slots } = asked;
  if (slots.reason === 'waste') return wasteAnswer(asked);
  if (slots.filter === 'budget') return budgetAnswer(asked);
  if (Array.isArray(slots.compare)) return compareAnswer(asked);
  const cents = slotCents(slots, 'price');
  if (cents !== undefined) {
    if (slots.ingredient === undefined) {
      throw new Problem(
        'needs_more',
        'The price of what?',
        'Name the food and its package, like "oats 3.49 for 42 oz".',
      );
    }
    return statePrice(asked, findFood(asked.kitchen.book, slots.ingredient), cents);
  }
  if (slots.recipe === undefined && slots.ingredient !== undefined)
    return foodCost(asked, findFood(asked.kitchen.book, slots.ingredient));
  if (slots.recipe === undefined && slots.unit === undefined && (slots.per === 'game' || isDay(slots.when)))
    return gamesCost(asked);
  const recipe = await recipesMeant(asked);
  if (isSeveral(recipe)) return askWhichRecipe(asked, 'cost', 'The cost of which one?', recipe);
  if (!recipe) return askWhichRecipe(asked, 'cost', 'The cost of which recipe?');
  return recipeCostAnswer(asked, recipe);
}

const isDay = (when: unknown): boolean => typeof when === 'string';
