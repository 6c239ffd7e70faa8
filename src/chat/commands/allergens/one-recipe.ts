import type { Need } from '../../../nutrition/allergens.ts';
import { type AllergenReport, allergensOf } from '../../../nutrition/allergens-of.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { recipeFoods, standsAgainst } from '../../../nutrition/swap/offer.ts';
import type { Answer, NextStep } from '../../answer.ts';
import type { Answered, Asked } from '../../command.ts';
import { allergenName, isAllergy, listed, needName, reactionCaution } from '../../need-words.ts';
import type { Reading } from '../../slots.ts';
import { reportCautions, reportData, reportSections } from './report-sections.ts';
import { verdictTitle } from './verdict-words.ts';

/** Allergens of one recipe; with needs, the verdict first. An athlete who names no need is asked for it. */
export function recipeAnswer(asked: Asked, recipe: Recipe, needs: readonly Need[]): Answered {
  const { book } = asked.kitchen;
  const foods = recipeFoods(recipe, book.foods);
  const report = allergensOf(foods, book.settings.allergenList);
  const found = standsAgainst(foods, needs);
  const asksNeed = needs.length === 0 && !isStaff(asked);
  const answer: Answer = {
    title:
      needs.length > 0
        ? verdictTitle(recipe.title, needs, found)
        : containsTitle(recipe.title, report) + (asksNeed ? ' Which allergy or need do you have?' : ''),
    sections: reportSections(report),
    cautions: [
      ...reportCautions(report),
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
  const without = needs.map((need) => `${needName(need)}-free`).join(' and ');
  const says = stands
    ? [`${without} version of ${recipe.title}`, `what can I eat without ${listed(needs.map(needName))}`]
    : [`recipe for ${recipe.title}`];
  return says.map((words) => ({ label: words, says: words }));
}
