import type { Need } from '../../../nutrition/allergens.ts';
import { type AllergenReport, allergensOf } from '../../../nutrition/allergens-of.ts';
import { judgeAvoidedFood } from '../../../nutrition/avoided-food.ts';
import type { Food } from '../../../nutrition/food.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { recipeFoods, type StillThere, standsAgainst } from '../../../nutrition/swap/offer.ts';
import type { Answer, NextStep } from '../../answer.ts';
import type { Answered, Asked } from '../../command.ts';
import { foodCalled } from '../../find-food.ts';
import {
  allergenName,
  freeWords,
  isAllergy,
  listed,
  reactionCaution,
  widerThanPork,
} from '../../need-words.ts';
import type { Reading } from '../../slots.ts';
import { avoidedFoods } from '../roster/whose.ts';
import { ingredientLine } from './one-ingredient.ts';
import { reportCautions, reportData, reportSections } from './report-sections.ts';
import { verdictTitle } from './verdict-words.ts';

/** Allergens of one recipe; with needs, the verdict first. An athlete who names no need is asked for it. */
export function recipeAnswer(asked: Asked, recipe: Recipe, needs: readonly Need[]): Answered {
  const { book } = asked.kitchen;
  const foods = recipeFoods(recipe, book.foods);
  const report = allergensOf(foods, book.settings.allergenList);
  const found = standsAgainst(foods, needs);
  const avoided =
    asked.slots.ingredient === undefined ? undefined : foodCalled(book, String(asked.slots.ingredient));
  const asksNeed =
    needs.length === 0 && !avoided && !isStaff(asked) && avoidedFoods(asked.slots).length === 0;
  const answer: Answer = {
    title: [
      ...(avoided ? [ingredientLine(asked, recipe, avoided)] : []),
      ...(avoided && needs.length === 0 ? [] : [titleOf(recipe, report, needs, found)]),
      ...avoidedFoods(asked.slots).map((word) => foodLine(asked, recipe, word)),
      ...(asksNeed ? ['Which allergy or need do you have?'] : []),
    ].join(' '),
    sections: reportSections(report, needs),
    cautions: [
      ...reportCautions(report),
      ...widerThanPork(asked.request.text, needs),
      ...(needs.length === 0 || isAllergy(needs) ? [reactionCaution(book.settings)] : []),
      ...(asked.slots.changed_product === undefined
        ? []
        : [
            'A changed product reopens this check: read its ingredients and its "may contain" before the batch goes out.',
          ]),
    ],
    next: nextSteps(recipe, needs, found.length > 0),
    audience: 'asker',
    data: {
      recipe: recipe.id,
      ...reportData(report),
      ...(needs.length > 0 ? { avoid: needs, verdict: worst(found) } : {}),
    },
  };
  const last: Reading = { intent: 'allergens', slots: { ...asked.slots, recipe: recipe.id } };
  const { question: _answered, ...kept } = asked.conversation;
  return {
    answer,
    conversation: {
      ...kept,
      last,
      recipeId: recipe.id,
      ...(asksNeed ? { question: { slot: 'avoid', options: [], reading: last } } : {}),
    },
  };
}

/** How a recipe stands to a food that is on no list of allergens. */
function foodLine({ kitchen }: Asked, recipe: Recipe, word: string): string {
  const foods = recipeFoods(recipe, kitchen.book.foods);
  const of = (verdict: string) => foods.filter((food) => judgeAvoidedFood(food, word) === verdict);
  const names = (found: readonly Food[]) => listed(found.map(({ name }) => name));
  const [holds, ask] = [of('conflict'), of('ask')];
  if (holds.length > 0) return `Holds ${word}: ${names(holds)}.`;
  return ask.length > 0
    ? `Ask first about ${word}: ${names(ask)} (label not read).`
    : `No ${word} named among its ingredients.`;
}

function titleOf(
  { title }: Recipe,
  report: AllergenReport,
  needs: readonly Need[],
  found: readonly StillThere[],
): string {
  return needs.length > 0 ? verdictTitle(title, needs, found) : containsTitle(title, report);
}

const isStaff = (asked: Asked): boolean => ['staff', 'intern'].includes(asked.request.asker.role);

export function containsTitle(title: string, report: AllergenReport): string {
  const of = (status: string) =>
    report.findings.filter((f) => f.status === status).map((f) => allergenName(f.allergen));
  const contains = of('contains');
  const advisory = of('advisory');
  const may = advisory.length > 0 ? ` Labels advise: may contain ${listed(advisory)}.` : '';
  return contains.length > 0
    ? `${title}: contains ${listed(contains)}.${may}`
    : `${title}: none of the listed allergens named on its ingredients.${may}`;
}

const worst = (found: ReturnType<typeof standsAgainst>): string =>
  (['conflict', 'advisory', 'ask'] as const).find((v) => found.some((f) => f.judgement.verdict === v)) ??
  'clear_by_label';

function nextSteps(recipe: Recipe, needs: readonly Need[], stands: boolean): NextStep[] {
  const says = stands
    ? [`${freeWords(needs)} version of ${recipe.title}`, `${freeWords(needs)} recipes`]
    : [`recipe for ${recipe.title}`];
  return says.map((words) => ({ label: words, says: words }));
}
