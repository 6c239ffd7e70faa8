import type { Command } from '../../command.ts';
import { findFood } from '../../find-food.ts';
import { needsOf } from '../../need-words.ts';
import { ALL_ROLES } from '../../roles.ts';
import { askWhichRecipe, isSeveral, recipesMeant } from '../../which-recipe.ts';
import { allRecipesAnswer } from './all-recipes.ts';
import { foodAnswer } from './one-food.ts';
import { recipeAnswer } from './one-recipe.ts';

/** Scopes that ask about everything the kitchen makes rather than one recipe. */
const WIDE = new Set(['all_recipes', 'all_stock', 'week', 'roster']);

/** What is in a recipe or a food, what it may hold, and what nobody has checked. Only the asker sees it. */
export const allergens: Command = {
  intent: 'allergens',
  roles: ALL_ROLES,
  help: {
    line: 'what a recipe contains, what a label advises, what is not known',
    examples: [
      'allergens in the oat bars',
      'can I eat the cherry bars, peanut allergy',
      'what can a nut-free athlete eat',
    ],
  },
  async answers(asked) {
    const { slots, kitchen, conversation } = asked;
    const needs = needsOf(slots.avoid);
    const isWide = typeof slots.scope === 'string' && WIDE.has(slots.scope);
    if (isWide && slots.recipe === undefined) {
      const said = { intent: 'allergens', slots } as const;
      return { answer: allRecipesAnswer(asked, needs), conversation: { ...conversation, last: said } };
    }
    if (slots.ingredient !== undefined && slots.recipe === undefined)
      return { answer: foodAnswer(asked, findFood(kitchen.book, slots.ingredient), needs) };
    const recipe = await recipesMeant(asked);
    if (isSeveral(recipe)) return askWhichRecipe(asked, 'allergens', 'Which one?', recipe);
    if (!recipe && needs.length > 0) return { answer: allRecipesAnswer(asked, needs) };
    if (!recipe) return askWhichRecipe(asked, 'allergens', 'Which recipe?');
    return recipeAnswer(asked, recipe, needs);
  },
};
