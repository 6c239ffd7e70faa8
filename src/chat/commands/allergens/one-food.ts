import type { Need } from '../../../nutrition/allergens.ts';
import { type AllergenReport, allergensOf } from '../../../nutrition/allergens-of.ts';
import type { Food } from '../../../nutrition/food.ts';
import { standsAgainst } from '../../../nutrition/swap/offer.ts';
import type { Answer } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { isAllergy, reactionCaution } from '../../need-words.ts';
import { recipesWith } from './one-ingredient.ts';
import { containsTitle } from './one-recipe.ts';
import { reportCautions, reportData, reportSections } from './report-sections.ts';
import { verdictTitle } from './verdict-words.ts';

/** Allergens of one food, and which recipes of the kitchen use it. */
export function foodAnswer(asked: Asked, food: Food, needs: readonly Need[]): Answer {
  const { book } = asked.kitchen;
  const report = allergensOf([food], book.settings.allergenList);
  const usedIn = [...book.recipes.values()].filter((r) => r.lines.some((line) => line.foodId === food.id));
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
