import type { Need } from '../../../nutrition/allergens.ts';
import { allergensOf } from '../../../nutrition/allergens-of.ts';
import { judgeAvoidedFood } from '../../../nutrition/avoided-food.ts';
import type { Verdict } from '../../../nutrition/conflict.ts';
import { recipeVerdict } from '../../../nutrition/meets-needs.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { recipeFoods, standsAgainst } from '../../../nutrition/swap/offer.ts';
import type { Answer, Section } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import {
  AVENIN_NOTE,
  allergenName,
  CROSS_CONTACT,
  freeWords,
  isAllergy,
  listed,
  needName,
  reactionCaution,
  widerThanPork,
} from '../../need-words.ts';
import { avoidedFoods } from '../roster/whose.ts';
import { reasonsText } from './verdict-words.ts';

/** Every recipe by how it stands to the needs; without needs, what each contains. */
export function allRecipesAnswer(asked: Asked, needs: readonly Need[]): Answer {
  const foods = avoidedFoods(asked.slots);
  return needs.length + foods.length > 0 ? byNeed(asked, needs, foods) : matrix(asked);
}

const HEADINGS: readonly (readonly [Verdict, (avoided: string) => string])[] = [
  ['clear_by_label', (avoided) => `No ${avoided} on recipe and labels`],
  ['ask', () => 'Ask or read a label first'],
  ['advisory', () => 'A label says "may contain"'],
  ['conflict', (avoided) => `Not for avoiding ${avoided}`],
];

function byNeed(asked: Asked, needs: readonly Need[], foods: readonly string[]): Answer {
  const { book } = asked.kitchen;
  const recipes = [...book.recipes.values()];
  const verdicts = new Map(recipes.map((r) => [r, recipeVerdict(r, book.foods, needs, foods)]));
  const of = (verdict: Verdict) => recipes.filter((r) => verdicts.get(r) === verdict);
  const why = (recipe: Recipe) => {
    const found = standsAgainst(recipeFoods(recipe, book.foods), needs);
    const grave = found.filter((f) => f.judgement.verdict === verdicts.get(recipe));
    const named = foods.flatMap((word) => whyFood(recipe, word));
    const said = [...(grave.length > 0 ? [reasonsText(grave)] : []), ...named];
    return said.length > 0 ? `${recipe.title}: ${said.join('; ')}` : recipe.title;
  };
  const whyFood = (recipe: Recipe, word: string): string[] => {
    const found = recipeFoods(recipe, book.foods).filter(
      (food) => judgeAvoidedFood(food, word) === verdicts.get(recipe),
    );
    const isFound = found.length > 0 && verdicts.get(recipe) !== 'clear_by_label';
    return isFound ? [`${word}: ${listed(found.map(({ name }) => name))}`] : [];
  };
  const clear = of('clear_by_label');
  const avoided = listed([...needs.map(needName), ...foods], 'or');
  const hasOats = clear.some(
    (r) => allergensOf(recipeFoods(r, book.foods), book.settings.allergenList).labelledOats.length > 0,
  );
  return {
    title: `${clear.length} of ${recipes.length} recipes list no ${avoided}; the kitchen itself is not checked.`,
    sections: HEADINGS.flatMap(([verdict, heading]): Section[] => {
      const found = of(verdict);
      return found.length > 0 ? [{ kind: 'list', heading: heading(avoided), items: found.map(why) }] : [];
    }),
    cautions: [
      CROSS_CONTACT,
      ...widerThanPork(asked.request.text, needs),
      ...(needs.includes('gluten') && hasOats ? [AVENIN_NOTE] : []),
      ...(isAllergy(needs) || foods.length > 0 ? [reactionCaution(book.settings)] : []),
    ],
    next: (needs.length > 0 ? of('conflict') : [])
      .slice(0, 2)
      .map((r) => `${freeWords(needs)} version of ${r.title}`)
      .map((says) => ({ label: says, says })),
    audience: 'asker',
    data: {
      avoid: needs,
      clear: clear.map((r) => r.id),
      ask: of('ask').map((r) => r.id),
      advisory: of('advisory').map((r) => r.id),
      conflict: of('conflict').map((r) => r.id),
      crossContact: 'not_checked',
    },
  };
}

function matrix(asked: Asked): Answer {
  const { book } = asked.kitchen;
  const rows = [...book.recipes.values()].map((recipe) => {
    const report = allergensOf(recipeFoods(recipe, book.foods), book.settings.allergenList);
    const of = (status: string) => report.findings.filter((f) => f.status === status).map((f) => f.allergen);
    return { recipe, contains: of('contains'), advisory: of('advisory'), notKnown: of('not_known') };
  });
  const words = (allergens: readonly string[]) => listed(allergens.map(allergenName)) || '-';
  return {
    title: `Allergens of ${rows.length} recipes, by recipe and labels; the kitchen itself is not checked.`,
    sections: [
      {
        kind: 'table',
        columns: ['Recipe', 'Contains', 'May contain', 'Not known'].map((name) => ({ name, align: 'left' })),
        rows: rows.map((r) => [r.recipe.title, words(r.contains), words(r.advisory), words(r.notKnown)]),
      },
    ],
    cautions: [CROSS_CONTACT, reactionCaution(book.settings)],
    next: [{ label: 'nut-free recipes', says: 'what can a nut-free athlete eat' }],
    audience: 'asker',
    data: {
      recipes: rows.map(({ recipe, ...found }) => ({ recipe: recipe.id, ...found })),
      crossContact: 'not_checked',
    },
  };
}
