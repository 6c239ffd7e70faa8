import type { Need } from '../../../nutrition/allergens.ts';
import type { Food } from '../../../nutrition/food.ts';
import type { Answer } from '../../answer.ts';
import type { Asked, Command } from '../../command.ts';
import { foodCalled } from '../../find-food.ts';
import { findersOf } from '../../finders.ts';
import { needsOf } from '../../need-words.ts';
import { strangeName } from '../../reading/strange-name.ts';
import { askWhichRecipe, isSeveral, recipesMeant } from '../../which-recipe.ts';
import { rosterAnswer } from '../roster/index.ts';
import { ownNeeds, teamAnswer } from '../roster/team.ts';
import { stock } from '../stock/index.ts';
import { allRecipesAnswer } from './all-recipes.ts';
import { allergensHead } from './head.ts';
import { foodAnswer } from './one-food.ts';
import { recipeAnswer } from './one-recipe.ts';
import { unknownThing, unsureName } from './unsure-name.ts';

/** Scopes that ask about everything the kitchen makes rather than one recipe. */
const WIDE = new Set(['all_recipes', 'all_stock', 'week', 'roster']);

/** What is in a recipe or a food, what it may hold, and what nobody has checked. Only the asker sees it. */
export const allergens: Command = {
  ...allergensHead,
  async answers(said) {
    if (said.slots.scope === 'roster' && said.slots.action !== undefined) return rosterAnswer(said);
    const asked = await withNeedsOfAsker(withRecipeOfOnes(said));
    const { slots, conversation } = asked;
    const needs = needsOf(slots.avoid);
    const isWide = typeof slots.scope === 'string' && WIDE.has(slots.scope);
    const isTeam = stock.roles.includes(asked.request.asker.role);
    if (slots.scope === 'all_stock' && needs.length > 0 && slots.recipe === undefined && isTeam)
      return stock.answers(asked);
    const team = slots.scope === 'roster' ? await teamAnswer(asked, needs) : undefined;
    if (team) return { answer: team };
    if (isWide && slots.recipe === undefined) {
      const said = { intent: 'allergens', slots } as const;
      return { answer: allRecipesAnswer(asked, needs), conversation: { ...conversation, last: said } };
    }
    const food = foodMeant(asked);
    if (food) return { answer: whenUnsure(asked, food.name, needs) ?? foodAnswer(asked, food, needs) };
    const recipe = await recipeNamed(asked);
    if (isSeveral(recipe)) return askWhichRecipe(asked, 'allergens', 'Which one?', recipe);
    if (!recipe && needs.length > 0) return { answer: allRecipesAnswer(asked, needs) };
    if (!recipe) return askWhichRecipe(asked, 'allergens', 'Which recipe?');
    const unsure = slots.recipe === undefined ? undefined : whenUnsure(asked, recipe.title, needs);
    return unsure ? { answer: unsure } : recipeAnswer(asked, recipe, needs);
  },
};

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

/** "Can I eat the cherry bars" is asked for what the person has told: theirs is the answer nobody else gets. */
async function withNeedsOfAsker(asked: Asked): Promise<Asked> {
  const { slots, request } = asked;
  if (
    slots.avoid !== undefined ||
    slots.recipe === undefined ||
    !/\b(?:can|may|could) i\b/i.test(request.text)
  )
    return asked;
  const person = await ownNeeds(asked);
  return person && person.avoid.length > 0
    ? { ...asked, slots: { ...slots, avoid: [...person.avoid] } }
    : asked;
}

/** The food that is asked about; a name that is no recipe here may still be a food. */
function foodMeant(asked: Asked): Food | undefined {
  const { slots, kitchen } = asked;
  if (typeof slots.recipe === 'string') {
    const isRecipe = kitchen.book.recipes.has(slots.recipe);
    return isRecipe ? undefined : foodCalled(kitchen.book, slots.recipe);
  }
  if (slots.ingredient === undefined) return undefined;
  const words = String(slots.ingredient);
  const food = foodCalled(kitchen.book, words);
  if (!food) throw unknownThing(asked, words, 'unknown_food');
  return food;
}

async function recipeNamed(asked: Asked): ReturnType<typeof recipesMeant> {
  const { slots, kitchen } = asked;
  const isUnknown =
    typeof slots.recipe === 'string' &&
    !kitchen.book.recipes.has(slots.recipe) &&
    findersOf(kitchen.book).recipes.find(slots.recipe).kind === 'unknown';
  if (isUnknown) throw unknownThing(asked, String(slots.recipe), 'unknown_recipe');
  return recipesMeant(asked);
}

/** A question back when the message names more than this kitchen knows; nothing when the name is sure. */
function whenUnsure({ request, kitchen }: Asked, known: string, needs: readonly Need[]): Answer | undefined {
  const strange = strangeName(request.text, kitchen.book, request.nowMs);
  return strange === undefined ? undefined : unsureName(strange, known, needs);
}
