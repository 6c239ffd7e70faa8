import type { Book } from '../../../nutrition/book.ts';
import type { Verdict } from '../../../nutrition/conflict.ts';
import { recipeVerdict } from '../../../nutrition/meets-needs.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import type { Answer, Section } from '../../answer.ts';
import { CROSS_CONTACT, needName, needsOf } from '../../need-words.ts';
import type { Slots } from '../../slots.ts';
import { avoidedFoods } from '../roster/whose.ts';
import { filterWords, matchesWords } from './filter-words.ts';

/** Every recipe, or those of a kind (`topic`) or for a need (`avoid`). */
export function recipeList(book: Book, slots: Slots): Answer {
  const words = filterWords(slots.topic);
  const needs = needsOf(slots.avoid);
  const foods = avoidedFoods(slots);
  const ofKind = [...book.recipes.values()].filter((recipe) => matchesWords(recipe, words));
  const verdicts = new Map(ofKind.map((recipe) => [recipe, recipeVerdict(recipe, book.foods, needs, foods)]));
  const by = (verdict: Verdict) => ofKind.filter((recipe) => verdicts.get(recipe) === verdict);
  const fitting = by('clear_by_label');
  const asking = by('ask');
  return {
    title: titleOf(fitting.length, book.recipes.size, words, [...needs.map(needName), ...foods]),
    sections: [...listed(undefined, fitting), ...listed('Read a label or ask first', asking)],
    cautions: needs.length + foods.length > 0 ? [CROSS_CONTACT] : [],
    next: nextFor(fitting[0]),
    audience: needs.length > 0 ? 'asker' : 'channel',
    data: {
      recipes: fitting.map(({ id }) => id),
      ...(needs.length > 0 ? { avoid: needs, askFirst: asking.map(({ id }) => id) } : {}),
    },
  };
}

function titleOf(count: number, all: number, words: readonly string[], avoided: readonly string[]): string {
  if (words.length === 0 && avoided.length === 0)
    return `${all} ${all === 1 ? 'recipe' : 'recipes'} in this kitchen.`;
  const without = avoided.join(' or ');
  const what = [words.join(' '), without && `with no ${without} by ingredients and labels`]
    .filter(Boolean)
    .join(', ');
  return `${count} of ${all} recipes: ${what}.`;
}

const listed = (heading: string | undefined, recipes: readonly Recipe[]): Section[] =>
  recipes.length === 0 ? [] : [{ kind: 'list', ...(heading ? { heading } : {}), items: recipes.map(lineOf) }];

const lineOf = (recipe: Recipe): string =>
  `${recipe.title} (${recipe.kind.replaceAll('_', ' ')}, makes ${recipe.yieldPieces})`;

const nextFor = (recipe: Recipe | undefined): Answer['next'] =>
  (recipe ? [`recipe for ${recipe.title}`, `40 ${recipe.title}`] : ['recipes']).map((says) => ({
    label: says,
    says,
  }));
