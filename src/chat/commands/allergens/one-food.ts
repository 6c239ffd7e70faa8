import type { Need } from '../../../nutrition/allergens.ts';
import { type AllergenReport, allergensOf } from '../../../nutrition/allergens-of.ts';
import type { Book } from '../../../nutrition/book.ts';
import type { Food } from '../../../nutrition/food.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { standsAgainst } from '../../../nutrition/swap/offer.ts';
import type { Answer } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { isAllergy, listed, reactionCaution } from '../../need-words.ts';
import { ownProduct } from '../../own-product.ts';
import { recipesWith } from './one-ingredient.ts';
import { containsTitle } from './one-recipe.ts';
import { reportCautions, reportData, reportSections } from './report-sections.ts';
import { verdictTitle } from './verdict-words.ts';

/**
 * Allergens of one food, and which recipes of the kitchen use it. A plain food whose package the kitchen has is answered
 * by that label; what a recipe holds of the plain one is said beside it.
 */
export function foodAnswer(asked: Asked, food: Food, needs: readonly Need[]): Answer {
  const answer = byCards(asked, food, needs);
  if (asked.slots.changed_product === undefined) return answer;
  return {
    ...answer,
    title: `If its package changed, go by the package and show it to staff: only the kitchen records labels. By what is recorded: ${answer.title}`,
  };
}

function byCards(asked: Asked, food: Food, needs: readonly Need[]): Answer {
  const own = ownProduct(asked.kitchen.book, food);
  if (!own) return answerOf(asked, food, needs);
  const answer = answerOf(asked, own, needs);
  const { book } = asked.kitchen;
  const elsewhere = recipesUsing(book, food);
  if (elsewhere.length === 0) return answer;
  const plain = titleOf(asked, food, allergensOf([food], book.settings.allergenList), needs);
  return {
    ...answer,
    title: `${answer.title} Not the same in ${listed(elsewhere.map((r) => r.title))}: ${plain}`,
  };
}

const recipesUsing = (book: Book, food: Food): Recipe[] =>
  [...book.recipes.values()].filter((recipe) => recipe.lines.some((line) => line.foodId === food.id));

function answerOf(asked: Asked, food: Food, needs: readonly Need[]): Answer {
  const { book } = asked.kitchen;
  const report = allergensOf([food], book.settings.allergenList);
  const usedIn = recipesUsing(book, food);
  return {
    title: titleOf(asked, food, report, needs),
    sections: [
      ...reportSections(report, needs),
      ...(food.note ? [{ kind: 'text', text: food.note } as const] : []),
      ...(usedIn.length > 0
        ? [{ kind: 'list', heading: 'Used in', items: usedIn.map((r) => r.title) } as const]
        : []),
      { kind: 'text', text: basisText(food) },
    ],
    cautions: [
      ...reportCautions(report),
      ...(needs.length === 0 || isAllergy(needs) ? [reactionCaution(book.settings)] : []),
    ],
    next: [{ label: `instead of ${food.name}`, says: `instead of ${food.name}` }],
    audience: 'asker',
    data: { food: food.id, ...reportData(report), usedIn: usedIn.map((r) => r.id) },
  };
}

/** "Kiwi allergy" asks where kiwi is, not what is in a kiwi. */
function titleOf(asked: Asked, food: Food, report: AllergenReport, needs: readonly Need[]): string {
  if (needs.length > 0) return verdictTitle(food.name, needs, standsAgainst([food], needs));
  return /\ballerg(?:y|ic)\b/i.test(asked.request.text)
    ? recipesWith(asked, food)
    : containsTitle(food.name, report);
}

function basisText(food: Food): string {
  const statement = food.product?.allergenStatement ?? food.product?.ingredientsStatement;
  if (statement) return `Its label says: ${statement}`;
  return food.allergenBasis === 'label'
    ? 'From its package label.'
    : 'From what kind of food it is; the package in use still has to be read.';
}
