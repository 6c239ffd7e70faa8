import type { Food } from '../../../nutrition/food.ts';
import { recipeVerdict } from '../../../nutrition/meets-needs.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { findSwaps, type SwapQuestion, tryReplacement } from '../../../nutrition/swap/find-swaps.ts';
import type { SwapOffer } from '../../../nutrition/swap/offer.ts';
import type { Asked } from '../../command.ts';
import { findFood } from '../../find-food.ts';
import { listed, needName, needsOf } from '../../need-words.ts';
import type { Slots, SlotValue } from '../../slots.ts';
import { offerText, standsFor } from '../swap/variant-text.ts';

/** The recipe with the swaps that were made, and what was different in words. */
export interface AsMade {
  readonly recipe: Recipe;
  readonly variant?: string;
}

/** What has to be known before the allergens of the batch are. */
export interface Question {
  readonly title: string;
  readonly slot: string;
  readonly options: readonly string[];
  readonly slots?: Slots;
}

export const isQuestion = (found: AsMade | Question): found is Question => 'title' in found;

/**
 * The recipe as it was made, with what was said and nothing more. A need ("nut free") without the swap that was used
 * is asked for: allergens are never guessed. A food named with its lot only is no swap.
 */
export async function asMade(asked: Asked, recipe: Recipe, mayAsk: boolean): Promise<AsMade | Question> {
  const { slots, kitchen } = asked;
  const needs = needsOf(slots.avoid);
  const named = needs.length > 0 ? offerNamed(asked, recipe) : undefined;
  if (named) return { recipe: named.recipe, variant: offerText(named) };
  const used = slots.ingredient === undefined ? undefined : await findFood(kitchen.book, slots.ingredient);
  const isOnCard = used !== undefined && recipe.lines.some((line) => line.foodId === used.id);
  if (used && !isOnCard) return swapped(asked, recipe, used);
  const spoken = needs.length === 0 ? await swapSpokenOf(asked, recipe) : undefined;
  if (spoken) return afterSwap(asked, recipe, spoken, mayAsk);
  if (needs.length === 0 || recipeVerdict(recipe, kitchen.book.foods, needs) === 'clear_by_label')
    return { recipe };
  const { offers } = findSwaps(questionOf(asked, recipe));
  const chosen = offers.find((offer) => offerText(offer) === slots.swap);
  if (chosen) return { recipe: chosen.recipe, variant: offerText(chosen) };
  const free = `free of ${listed(needs.map(needName))}`;
  if (mayAsk && offers.length > 0) {
    return {
      title: `Which swap made the ${recipe.title.toLowerCase()} ${free}?`,
      slot: 'swap',
      options: offers.map(offerText),
    };
  }
  throw new Problem(
    'needs_more',
    `${recipe.title} are not ${free} by their card, and the swap was not named.`,
    `Log them alone and say it, like "made 40 ${recipe.title.toLowerCase()} with sunflower butter instead of peanut butter".`,
  );
}

/** "made 20 nut free oat bars, sunflower butter for peanut butter": the swap, in the words it was offered in. */
function offerNamed(asked: Asked, recipe: Recipe): SwapOffer | undefined {
  const text = asked.request.text.toLowerCase();
  return findSwaps(questionOf(asked, recipe))
    .offers.filter((offer) => text.includes(`, ${offerText(offer).toLowerCase()}`))
    .sort((a, b) => offerText(b).length - offerText(a).length)[0];
}

const AS_WRITTEN = 'as on the card';

/** The swap this conversation was about just now; the batch may have been made with it, or not. */
async function swapSpokenOf(asked: Asked, recipe: Recipe): Promise<SwapQuestion | undefined> {
  const { slots, conversation, kitchen } = asked;
  const last = slots.swap === undefined ? conversation.last : conversation.question?.reading;
  const about = slots.swap === undefined ? last?.slots : (slots.after as Slots | undefined);
  if (!about || (slots.swap === undefined && last?.intent !== 'swap') || about.recipe !== recipe.id)
    return undefined;
  const out = about.ingredient === undefined ? undefined : await findFood(kitchen.book, about.ingredient);
  const needs = needsOf(about.avoid);
  if (!out && needs.length === 0) return undefined;
  return { ...questionOf(asked, recipe, out ? [out] : []), needs };
}

function afterSwap(asked: Asked, recipe: Recipe, question: SwapQuestion, mayAsk: boolean): AsMade | Question {
  const { swap } = asked.slots;
  if (swap === AS_WRITTEN || !mayAsk) return { recipe };
  const { offers } = findSwaps(question);
  const chosen = offers.find((offer) => offerText(offer) === swap);
  if (chosen) return { recipe: chosen.recipe, variant: offerText(chosen) };
  return {
    title: 'Made as on the card, or with a swap?',
    slot: 'swap',
    options: [AS_WRITTEN, ...offers.map(offerText)],
    slots: { after: (asked.conversation.last?.slots ?? {}) as SlotValue },
  };
}

function questionOf(asked: Asked, recipe: Recipe, without: readonly Food[] = []): SwapQuestion {
  const { foods, recipes, settings } = asked.kitchen.book;
  return { recipe, foods, recipes, needs: needsOf(asked.slots.avoid), without, list: settings.allergenList };
}

async function swapped(asked: Asked, recipe: Recipe, used: Food): Promise<AsMade | Question> {
  const { slots, kitchen } = asked;
  const { foods } = kitchen.book;
  const replaced = slots.replaced === undefined ? undefined : await findFood(kitchen.book, slots.replaced);
  const lines = recipe.lines.map((line) => foods.get(line.foodId)).filter((food) => food !== undefined);
  const was = replaced ?? likeliest(asked, recipe, used, lines);
  if (!was || !lines.some((food) => food.id === was.id)) {
    return {
      title: `${used.name} is not on the card of the ${recipe.title.toLowerCase()}. Instead of what?`,
      slot: 'replaced',
      options: lines.map((food) => food.name),
      slots: { ingredient: used.id },
    };
  }
  return { recipe: withLine(asked, recipe, was, used), variant: standsFor(used, was) };
}

/** Only the line that was named changes; the amount is the engine's where it has one, else the same mass. */
function withLine(asked: Asked, recipe: Recipe, was: Food, used: Food): Recipe {
  const { foods, recipes, settings } = asked.kitchen.book;
  const offer = tryReplacement(
    { recipe, foods, recipes, needs: [], without: [was], list: settings.allergenList },
    used,
  );
  const massG = new Map(offer?.swaps.map((swap) => [swap.lineIndex, swap.massAfterG]));
  return {
    ...recipe,
    lines: recipe.lines.map((line, i) =>
      line.foodId === was.id ? { ...line, foodId: used.id, massG: massG.get(i) ?? line.massG } : line,
    ),
  };
}

/** The line this food is offered for when it is left out; only one that has a shared role, else it is asked. */
function likeliest(asked: Asked, recipe: Recipe, used: Food, lines: readonly Food[]): Food | undefined {
  const needs = needsOf(asked.slots.avoid);
  if (needs.length > 0) {
    const offers = findSwaps({ ...questionOf(asked, recipe), most: 6 }).offers;
    const swap = offers.flatMap((offer) => offer.swaps).find(({ to }) => to?.id === used.id);
    if (swap) return swap.from;
  }
  const sameGroup = lines.filter((food) => food.group === used.group);
  return sameGroup.length === 1 ? sameGroup[0] : undefined;
}
