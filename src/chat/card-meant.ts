import type { Need } from '../nutrition/allergens.ts';
import type { Book } from '../nutrition/book.ts';
import { recipeVerdict } from '../nutrition/meets-needs.ts';
import { Problem } from '../nutrition/problem.ts';
import type { Recipe } from '../nutrition/recipe.ts';
import type { SwapOffer } from '../nutrition/swap/offer.ts';
import type { Answer } from './answer.ts';
import { startRecipe } from './commands/balance/start-recipe.ts';
import { offerText } from './commands/swap/variant-text.ts';
import { freeWords, listed, needName } from './need-words.ts';

/** The card that "nut free oat bars" means: with the swap it takes, or as it is where nothing has to or can change. */
export interface CardMeant {
  readonly card: Recipe;
  readonly offer?: SwapOffer;
  /** Which swap it is, or that the card is as written: said before any figure. Absent when no need was said. */
  readonly note?: string;
  /** "made 40 nut-free oat bars, sunflower butter for peanut butter": logs the swapped batch. */
  madeSays(pieces: number): string;
}

/** Works the swap out with the engine that balancing and shopping use. */
export function cardMeant(book: Book, recipe: Recipe, needs: readonly Need[]): CardMeant {
  const title = recipe.title.toLowerCase();
  const asWritten = { card: recipe, madeSays: (pieces: number) => `made ${pieces} ${title}` };
  if (needs.length === 0) return asWritten;
  const avoided = listed(needs.map(needName), 'or');
  if (recipeVerdict(recipe, book.foods, needs) === 'clear_by_label') return asWritten;
  const start = startOrNone(book, recipe, needs);
  if (!start?.offer)
    return {
      ...asWritten,
      note: `This is the card as it is, NOT ${freeWords(needs)}: no swap here leaves out ${avoided}.`,
    };
  const { offer } = start;
  const swaps = listed(
    offer.swaps.map(({ from, to }) => (to ? `${to.name} for ${from.name}` : `no ${from.name}`)),
  );
  return {
    card: start.recipe,
    offer,
    note: `Swapped, to list no ${avoided}: ${swaps}. Read every package in use; the kitchen was not checked.`,
    madeSays: (pieces) => `made ${pieces} ${freeWords(needs)} ${title}, ${offerText(offer)}`,
  };
}

function startOrNone(book: Book, recipe: Recipe, needs: readonly Need[]) {
  try {
    return startRecipe(recipe, book, needs);
  } catch (error) {
    if (error instanceof Problem && error.code === 'not_possible') return undefined;
    throw error;
  }
}

/**
 * An answer about the card meant: what it is before any figure, in the title too, so that no figure of a card as it is
 * passes for one without what is avoided.
 */
export function saidFirst(
  answer: Answer,
  needs: readonly Need[],
  notes: readonly string[],
  offer: SwapOffer | undefined,
): Answer {
  if (notes.length === 0) return answer;
  const sections = [...notes.map((text) => ({ kind: 'text', text }) as const), ...answer.sections];
  if (needs.length === 0) return { ...answer, sections };
  const free = freeWords(needs);
  const title = offer
    ? `${free.charAt(0).toUpperCase()}${free.slice(1)} by swap: ${answer.title}`
    : `NOT ${free}, as on the card: ${answer.title}`;
  const data = { ...answer.data, avoid: needs, ...(offer ? { swap: offerText(offer) } : {}) };
  // What is asked next is of the swapped card too.
  const batch = offer && `40 ${free} ${offer.recipe.title.toLowerCase()}`;
  const next = batch ? [batch, `cost of ${batch}`].map((says) => ({ label: says, says })) : answer.next;
  return { ...answer, title, sections, next, audience: 'asker', data };
}
