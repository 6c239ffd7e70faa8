import type { Need } from '../../../nutrition/allergens.ts';
import type { Book } from '../../../nutrition/book.ts';
import type { Food } from '../../../nutrition/food.ts';
import { nameKey } from '../../../nutrition/name-key.ts';
import type { Answered, Asked, Command } from '../../command.ts';
import { foodCalled } from '../../find-food.ts';
import { findersOf } from '../../finders.ts';
import { needsOf } from '../../need-words.ts';
import { askWhichRecipe, isSeveral, recipesMeant } from '../../which-recipe.ts';
import { rosterAnswer } from '../roster/index.ts';
import { teamAnswer } from '../roster/team.ts';
import { forWhom, toldFor } from '../roster/whose.ts';
import { stock } from '../stock/index.ts';
import { allRecipesAnswer } from './all-recipes.ts';
import { allergensHead } from './head.ts';
import { labelTold, tellsOfLabel } from './label-told.ts';
import { foodAnswer } from './one-food.ts';
import { recipeAnswer } from './one-recipe.ts';
import { unsureName, whenUnsure } from './unsure-name.ts';
import { askWhichProduct, isTold, withProductNamed } from './which-product.ts';

/** Scopes that ask about everything the kitchen makes rather than one recipe. */
const WIDE = new Set(['all_recipes', 'all_stock', 'week', 'roster']);

/** What is in a recipe or a food, what it may hold, and what nobody has checked. Only the asker sees it. */
export const allergens: Command = {
  ...allergensHead,
  async answers(said) {
    if (said.slots.scope === 'roster' && said.slots.action !== undefined) return rosterAnswer(said);
    const ones = withRecipeOfOnes(withProductNamed(said));
    const whom = await forWhom(ones);
    return toldFor(await answersFor(whom.person ? forPerson(whom.asked) : ones), whom, ones);
  },
};

/** "What can WP-07 eat" is about one person, not the roster, and about everything when no recipe is named. */
function forPerson(asked: Asked): Asked {
  const { scope, ...others } = asked.slots;
  const isOfRoster = scope === undefined || scope === 'roster';
  const isNamed = others.recipe !== undefined || others.ingredient !== undefined;
  if (isOfRoster && isNamed) return { ...asked, slots: others };
  return isOfRoster ? { ...asked, slots: { ...others, scope: 'all_recipes' } } : asked;
}

async function answersFor(asked: Asked): Promise<Answered> {
  const { slots, conversation } = asked;
  const needs = needsOf(slots.avoid);
  const isWide = typeof slots.scope === 'string' && WIDE.has(slots.scope);
  const isTeam = stock.roles.includes(asked.request.asker.role);
  if (slots.scope === 'all_stock' && needs.length > 0 && slots.recipe === undefined && isTeam)
    return stock.answers(asked);
  const named = slots.recipe ?? slots.ingredient;
  const unsure = isWide && named === undefined ? undefined : unsureHere(asked, needs);
  if (unsure) return unsure;
  const team = slots.scope === 'roster' ? await teamAnswer(asked, needs) : undefined;
  if (team) return { answer: team };
  if (isWide && slots.recipe === undefined) {
    const said = { intent: 'allergens', slots } as const;
    return { answer: allRecipesAnswer(asked, needs), conversation: { ...conversation, last: said } };
  }
  const food = foodMeant(asked);
  if (food && tellsOfLabel(asked)) return labelAnswered(asked, food);
  if (isTold(asked)) return askWhichProduct(asked);
  if (food) return { answer: foodAnswer(asked, food, needs) };
  const recipe = await recipesMeant(asked);
  if (isSeveral(recipe)) return askWhichRecipe(asked, 'allergens', 'Which one?', recipe);
  if (!recipe && needs.length > 0) return { answer: allRecipesAnswer(asked, needs) };
  if (!recipe) return askWhichRecipe(asked, 'allergens', 'Which recipe?');
  return recipeAnswer(asked, recipe, needs);
}

/** What was told is recorded; a question about it is no longer open. */
async function labelAnswered(asked: Asked, food: Food): Promise<Answered> {
  const { question: _answered, ...conversation } = asked.conversation;
  return { answer: await labelTold(asked, food), conversation };
}

/** "And the cherry ones" are the cherry bars, asked about for the same need; cherries alone would say too little. */
function withRecipeOfOnes(asked: Asked): Asked {
  const { slots, conversation, kitchen, request } = asked;
  const { last } = conversation;
  if (!/\bones?\b/i.test(request.text) || last?.intent !== 'allergens') return asked;
  const avoid = slots.avoid ?? last.slots.avoid;
  if (slots.recipe !== undefined) return { ...asked, slots: { ...slots, avoid } };
  if (slots.ingredient === undefined) return asked;
  const match = findersOf(kitchen.book).recipes.find(String(slots.ingredient));
  if (match.kind !== 'found') return asked;
  const { ingredient: _word, ...others } = slots;
  return { ...asked, slots: { ...others, recipe: match.recipe.id, avoid } };
}

/** The food that is asked about; a name that is no recipe here may still be a food. */
function foodMeant({ slots, kitchen }: Asked): Food | undefined {
  const isRecipe = typeof slots.recipe === 'string' && kitchen.book.recipes.has(slots.recipe);
  const name = slots.recipe ?? slots.ingredient;
  return isRecipe || name === undefined ? undefined : foodCalled(kitchen.book, String(name));
}

/** The question back when the message, or what was read of it, is the exact name of nothing here. */
function unsureHere(asked: Asked, needs: readonly Need[]): Answered | undefined {
  const unsure = whenUnsure(asked, 'allergens', needs);
  if (unsure) return unsure;
  const { book } = asked.kitchen;
  const name = asked.slots.recipe ?? asked.slots.ingredient;
  if (name === undefined) return undefined;
  const words = String(name);
  const isKnown = book.recipes.has(words) || isRecipeName(words, book) || foodCalled(book, words);
  return isKnown ? undefined : unsureName(asked, words, 'allergens', needs);
}

/** A name several recipes answer to is asked about, one that only resembles a recipe's is not this kitchen's. */
const isRecipeName = (words: string, book: Book): boolean =>
  findersOf(book).recipes.names().has(nameKey(words));
