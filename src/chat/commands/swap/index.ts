import type { Need } from '../../../nutrition/allergens.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { findSwaps, type SwapQuestion } from '../../../nutrition/swap/find-swaps.ts';
import type { Answered, Asked, Command } from '../../command.ts';
import type { ConversationState } from '../../conversation.ts';
import { findFood } from '../../find-food.ts';
import { freeWords, needsOf } from '../../need-words.ts';
import { askWhichRecipe, isSeveral, recipesMeant } from '../../which-recipe.ts';
import { allRecipesAnswer } from '../allergens/all-recipes.ts';
import { whenUnsure } from '../allergens/unsure-name.ts';
import { generalAnswer } from './general.ts';
import { swapHead } from './head.ts';
import { linesMeant, requireLines } from './lines-meant.ts';
import { offersAnswer } from './offers.ts';
import { replacementAnswer } from './replacement.ts';

/** Swaps by ingredient or by need, the whole recipe recomputed. Only the asker sees them: needs are personal. */
export const swap: Command = {
  ...swapHead,
  async answers(said) {
    const asked = withWhatWasOut(said);
    const needs = needsOf(asked.slots.avoid);
    const unsure = whenUnsure(asked, 'swap', needs);
    if (unsure) return unsure;
    const recipe = await recipesMeant(asked);
    if (isSeveral(recipe)) return askWhichRecipe(asked, 'swap', 'Which one?', recipe);
    const { ingredient } = asked.slots;
    const named = asked.slots.recipe !== undefined;
    if (ingredient !== undefined) {
      const meant = recipe ? linesMeant(recipe, asked.kitchen.book, String(ingredient)) : [];
      if (recipe && meant.length > 0) return withRecipe(asked, recipe, needs, meant);
      const food = findFood(asked.kitchen.book, ingredient);
      if (recipe && named) throw requireLines(recipe, asked.kitchen.book, food.name);
      return generalAnswer(asked, food, needs);
    }
    if (!recipe && needs.length > 0) return whatThereIs(asked, needs);
    if (!recipe) return askWhichRecipe(asked, 'swap', 'Which ingredient, in which recipe?');
    if (needs.length === 0) return askWhat(asked, recipe);
    return withRecipe(asked, recipe, needs, []);
  },
};

/** "In the smoothie", after "out of milk" named no recipe. */
function withWhatWasOut(asked: Asked): Asked {
  const { slots, conversation } = asked;
  const last = conversation.last?.intent === 'swap' ? conversation.last.slots : undefined;
  const isOnlyRecipe =
    slots.recipe !== undefined && slots.ingredient === undefined && slots.avoid === undefined;
  if (!last || last.recipe !== undefined || last.ingredient === undefined || !isOnlyRecipe) return asked;
  return { ...asked, slots: { ...last, ...slots } };
}

/** A need and no recipe: what meets it as it is, and the question which other recipe to change. */
function whatThereIs(asked: Asked, needs: readonly Need[]): Answered {
  const { conversation } = askWhichRecipe(asked, 'swap', 'Which recipe shall I change?');
  const answer = allRecipesAnswer(asked, needs);
  const question = `To change another one, name it: "${freeWords(needs)} version of ...".`;
  return {
    answer: { ...answer, sections: [...answer.sections, { kind: 'text', text: question }] },
    ...(conversation ? { conversation } : {}),
  };
}

async function withRecipe(
  asked: Asked,
  recipe: Recipe,
  needs: readonly Need[],
  without: SwapQuestion['without'],
): Promise<Answered> {
  const question = questionOf(asked, recipe, needs, without ?? []);
  const answer =
    asked.slots.replacement === undefined || without?.length === 0
      ? offersAnswer(asked, question, findSwaps(question))
      : replacementAnswer(asked, question, findFood(asked.kitchen.book, asked.slots.replacement));
  return { answer, conversation: settled(asked, recipe) };
}

function questionOf(
  asked: Asked,
  recipe: Recipe,
  needs: readonly Need[],
  without: NonNullable<SwapQuestion['without']>,
): SwapQuestion {
  const { foods, recipes, settings } = asked.kitchen.book;
  return { recipe, foods, recipes, needs, without, list: settings.allergenList };
}

function settled(asked: Asked, recipe: Recipe): ConversationState {
  const { question: _answered, ...kept } = asked.conversation;
  return {
    ...kept,
    recipeId: recipe.id,
    last: { intent: 'swap', slots: { ...asked.slots, recipe: recipe.id } },
  };
}

/** The recipe is known and nothing else: ask which ingredient is out or what to avoid. */
function askWhat(asked: Asked, recipe: Recipe): Answered {
  const names = recipe.lines.flatMap((line) => asked.kitchen.book.foods.get(line.foodId)?.name ?? []);
  const reading = { intent: 'swap', slots: { ...asked.slots, recipe: recipe.id } } as const;
  return {
    answer: {
      title: `${recipe.title}: which ingredient is out, or what should it be without?`,
      sections: [{ kind: 'list', heading: 'In it', items: names }],
      cautions: [],
      next: [`nut-free version of ${recipe.title}`, `out of ${names[0] ?? 'milk'}`].map((says) => ({
        label: says,
        says,
      })),
      audience: 'asker',
      data: { asks: 'ingredient', recipe: recipe.id },
    },
    conversation: {
      ...asked.conversation,
      recipeId: recipe.id,
      question: { slot: 'ingredient', options: recipe.lines.map((line) => line.foodId), reading },
    },
  };
}
