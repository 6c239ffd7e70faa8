import type { PersonNeeds } from '../../../kitchen/roster/roster.ts';
import { judgeAvoidedFood } from '../../../nutrition/avoided-food.ts';
import type { Book } from '../../../nutrition/book.ts';
import { conflictsWith } from '../../../nutrition/conflict.ts';
import { recipeFoods } from '../../../nutrition/swap/offer.ts';
import { listed, needName } from '../../need-words.ts';

/** What a person likes and avoids at once, one line each. What is avoided counts. */
export function contradictions({ avoid, foods, likes }: PersonNeeds, book: Book): string[] {
  return likes.flatMap((id) => {
    const recipe = book.recipes.get(id);
    if (!recipe) return [];
    const holds = recipeFoods(recipe, book.foods);
    const against = [
      ...avoid.filter((need) => holds.some((food) => conflictsWith(food, need) === 'conflict')).map(needName),
      ...foods.filter((word) => holds.some((food) => judgeAvoidedFood(food, word) === 'conflict')),
    ];
    return against.length > 0
      ? [
          `${recipe.title} are liked, and as on the card they hold ${listed(against)}, which is avoided. What is avoided counts.`,
        ]
      : [];
  });
}
