import type { Which } from '../../kitchen/stock/choose.ts';
import type { Desk } from '../../kitchen/stock/desk.ts';
import type { Batch, Holding } from '../../kitchen/stock/ledger.ts';
import { placesCalled } from '../../kitchen/stock/places.ts';
import { Problem } from '../../nutrition/problem.ts';
import type { Answered, Asked } from '../command.ts';
import type { Intent, Slots } from '../slots.ts';
import { recipeMeant } from '../which-recipe.ts';
import { pastDay } from './when.ts';

/** Units that name people or nothing in particular; they choose no recipe. */
const VAGUE = new Set(['person', 'piece', 'serving', 'snack']);

/** Whether a unit slot tells kinds of pieces apart: bar, bite, muffin. */
export const isPieceUnit = (unit: unknown): unit is string => typeof unit === 'string' && !VAGUE.has(unit);

/** "B3" as a code of ours, whether the reader called it a batch or a lot. */
export function codeSaid(slots: Slots): string | undefined {
  const said = slots.batch ?? slots.lot;
  return typeof said === 'string' && /^b\d+$/i.test(said) ? said.toUpperCase() : undefined;
}

/** The batch with this code, used up or not. Throws `not_found` with the codes that are in stock. */
export async function batchCalled(desk: Desk, code: string): Promise<Batch> {
  const [batch] = await desk.ledger.batches({ codes: [code] });
  if (batch) return batch;
  const held = [...new Set((await desk.ledger.holdings()).map((holding) => holding.batch.code))];
  throw new Problem(
    'not_found',
    `There is no batch ${code}.`,
    held.length > 0 ? `In stock are ${held.slice(0, 8).join(', ')}.` : 'Nothing is in stock.',
  );
}

/** What was said about which pieces: batch, recipe, day, place. The rest is open. */
export async function whichSaid(asked: Asked, desk: Desk): Promise<Which> {
  const { slots, kitchen } = asked;
  const code = codeSaid(slots);
  if (code !== undefined) await batchCalled(desk, code);
  const recipe =
    code === undefined && typeof slots.recipe === 'string' ? await recipeMeant(asked) : undefined;
  const madeDate = pastDay(asked, slots.made);
  const location = typeof slots.location === 'string' ? slots.location : undefined;
  return {
    ...(code === undefined ? {} : { code }),
    ...(recipe === undefined ? {} : { recipeId: recipe.id }),
    ...(madeDate === undefined ? {} : { madeDate }),
    ...(location === undefined
      ? {}
      : { places: placesCalled(kitchen.book, location).map((place) => place.id) }),
  };
}

/** Narrows what was said to one recipe where stock or the conversation leaves only one; else `undefined`: ask. */
export function oneRecipe(asked: Asked, holdings: readonly Holding[], which: Which): Which | undefined {
  if (which.code !== undefined || which.recipeId !== undefined) return which;
  const { unit } = asked.slots;
  const ofUnit = holdings.filter(({ batch }) => !isPieceUnit(unit) || batch.pieceUnit === unit);
  const recipes = new Set(ofUnit.map(({ batch }) => batch.recipeId));
  const spoken = asked.conversation.recipeId;
  if (spoken !== undefined && recipes.has(spoken)) return { ...which, recipeId: spoken };
  const [only] = recipes;
  return recipes.size === 1 && only !== undefined ? { ...which, recipeId: only } : undefined;
}

/** "Which ones?" with what is in stock; the next message may answer it. */
export function askWhichStock(asked: Asked, intent: Intent, holdings: readonly Holding[]): Answered {
  const found = new Map(holdings.map(({ batch }) => [batch.recipeId, batch.recipeTitle]));
  if (found.size === 0) {
    throw new Problem('not_possible', 'Nothing is in stock.', 'Log what was made, like "made 40 oat bars".');
  }
  const titles = [...found.values()];
  return {
    answer: {
      title: `Which ones: ${titles.join(', ')}? Not logged yet.`,
      sections: [],
      cautions: [],
      next: titles.slice(0, 3).map((title) => ({ label: title, says: title })),
      audience: 'asker',
      data: { asks: 'recipe', options: [...found.keys()] },
    },
    conversation: {
      ...asked.conversation,
      question: { slot: 'recipe', options: [...found.keys()], reading: { intent, slots: asked.slots } },
    },
  };
}
