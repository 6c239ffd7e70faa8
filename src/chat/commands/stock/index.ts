import { matches, type Which } from '../../../kitchen/stock/choose.ts';
import { stockView } from '../../../kitchen/stock/view.ts';
import type { Answer } from '../../answer.ts';
import type { Answered, Asked, Command } from '../../command.ts';
import { needsOf } from '../../need-words.ts';
import { withAmount } from '../../pantry/how-much.ts';
import { withOpened } from '../../pantry/opened-packages.ts';
import { received } from '../../pantry/received.ts';
import { foodOnHand, shelf } from '../../pantry/shelf.ts';
import { deskOf } from '../../stock/desk.ts';
import { isPieceUnit, whichSaid } from '../../stock/which.ts';
import { avoidedFoods, forWhom, toldFor } from '../roster/whose.ts';
import { batchInfo } from './batch-info.ts';
import { enough } from './enough.ts';
import { expiring, low, mustThrowOut } from './filters.ts';
import { stockHead } from './head.ts';
import { byNeeds } from './needs.ts';
import { overview, place, someStock } from './overview.ts';
import { firstOutAnswer, shelfLife, useBy } from './use-by.ts';
import { weekAnswer } from './week.ts';

/** What is there, until when, and what to do about it. */
export const stock: Command = {
  ...stockHead,
  async answers(said) {
    const amount = withAmount(said);
    if (amount.slots.action === 'received') return received(amount);
    const whom = await forWhom(amount);
    return toldFor(await stockAnswer(whom.asked), whom, amount);
  },
};

async function stockAnswer(asked: Asked): Promise<Answered> {
  const answer = await answerOf(asked);
  const { slots, conversation } = asked;
  const recipeId = typeof slots.recipe === 'string' ? { recipeId: slots.recipe } : {};
  return { answer, conversation: { ...conversation, ...recipeId, last: { intent: 'stock', slots } } };
}

async function answerOf(asked: Asked): Promise<Answer> {
  const { slots, kitchen, request } = asked;
  const desk = deskOf(asked);
  if (slots.ingredient !== undefined && slots.recipe === undefined) return foodOnHand(asked);
  if (slots.location === 'pantry' && slots.recipe === undefined) return shelf(asked);
  if (slots.ask === 'week') return weekAnswer(asked, desk);
  if (slots.ask === 'batch_info') return batchInfo(asked, desk);
  if (slots.ask === 'shelf_life' && slots.batch === undefined) return shelfLife(asked);
  const which = withUnit(asked, await whichSaid(asked, desk));
  const holdings = (await desk.ledger.holdings()).filter((holding) => matches(holding, which));
  const view = stockView(holdings, kitchen.book, request.nowMs);
  const needs = needsOf(slots.avoid);
  if (needs.length + avoidedFoods(slots).length > 0) return byNeeds(asked, view, needs);
  switch (slots.ask) {
    case 'use_by':
    case 'shelf_life':
      return useBy(asked, desk, holdings, which);
    case 'first_out':
      return firstOutAnswer(asked, view);
    case 'enough':
      return enough(asked, view, holdings);
  }
  switch (slots.filter) {
    case 'expired':
      return withOpened(asked, mustThrowOut(asked, view, which), 'past');
    case 'expiring':
      return withOpened(asked, expiring(asked, view), 'coming');
    case 'low':
      return low(asked, view);
  }
  if (slots.location !== undefined) return place(asked, view, which.places ?? []);
  return Object.keys(which).length > 0 ? someStock(asked, view, which) : overview(asked, view);
}

/** "how many bites are left" names a kind of piece and no recipe. */
function withUnit({ slots }: Asked, which: Which): Which {
  const { unit } = slots;
  return which.recipeId === undefined && which.code === undefined && isPieceUnit(unit)
    ? { ...which, pieceUnit: unit }
    : which;
}
