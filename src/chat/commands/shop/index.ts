import { listNow } from '../../../kitchen/shopping/list-now.ts';
import { EMPTY_SHELF, shelfOn } from '../../../kitchen/shopping/shelf-now.ts';
import { shoppingOf } from '../../../kitchen/shopping/shopping.ts';
import type { Answered, Asked, Command } from '../../command.ts';
import { ifKept } from '../../if-kept.ts';
import type { Slots } from '../../slots.ts';
import { deskOf } from '../../stock/desk.ts';
import { settled, withQuestion } from '../../stock/merged.ts';
import type { Trip } from './batches.ts';
import { changeList } from './change-list.ts';
import { shopHead } from './head.ts';
import { listAnswer } from './list-answer.ts';
import { shoppingAnswer } from './shopping-answer.ts';
import { substitutesFor } from './substitutes.ts';
import { tripMeant } from './trip.ts';

/** What to buy: for batches, a game, a plan; and the list people keep by hand. */
export const shop: Command = {
  ...shopHead,
  answers: (asked) => answer(withLast(withQuestion(asked))),
};

async function answer(asked: Asked): Promise<Answered> {
  if (typeof asked.slots.action === 'string') return changeList(asked);
  const trip = await tripMeant(asked);
  if (!trip) return { answer: await listAnswer(asked), conversation: settled(asked, 'shop') };
  if ('answer' in trip) return trip;
  const recipes = trip.batches.map(({ recipe }) => recipe.id);
  return { answer: await tripAnswer(asked, trip), conversation: settled(asked, 'shop', recipes) };
}

async function tripAnswer(asked: Asked, trip: Trip) {
  const { book } = asked.kitchen;
  const shelf = (await ifKept(async () => shelfOn(deskOf(asked).ledger, book, trip.date))) ?? EMPTY_SHELF;
  const { out, sections, data } = substitutesFor(asked, trip.batches, shelf);
  const needs = trip.batches.flatMap(({ amounts }) => amounts).filter(({ food }) => !out.has(food.id));
  const onList = listNow((await ifKept(async () => deskOf(asked).ledger.listNotes())) ?? []).length;
  const { says } = trip;
  return shoppingAnswer(asked, {
    name: trip.name,
    shopping: shoppingOf(needs, [], shelf, book),
    shelf,
    lines: trip.lines,
    isPersonal: trip.batches.some(({ free }) => free !== undefined),
    notes: trip.notes,
    more: [
      ...sections,
      ...(onList > 0
        ? [{ kind: 'text' as const, text: `${onList} more on the list by hand: "shopping list".` }]
        : []),
    ],
    next: [
      ...(says === undefined || says.length > 60 ? [] : [`add ${says.toLowerCase()} to the list`]),
      'shopping list',
      'what is in the pantry',
    ].map((words) => ({ label: words, says: words })),
    data: {
      batches: trip.batches.map(({ recipe, pieces }) => ({ recipe: recipe.id, pieces })),
      ...(data.length > 0 ? { substitutes: data } : {}),
    },
  });
}

/** A new list begins; anything shorter ("and for 60?", "out of honey") leans on the last. */
const STARTS = /\b(?:shop|shopping|buy|grocer\w*|list|order\w*)\b/i;
/** The list itself, whatever was spoken of before. */
const THE_LIST = /^\W*(?:the |our |my )?list\W*$/i;

/** The last request with what this short one says differently; right after a plan, what that plan needs. */
function withLast(asked: Asked): Asked {
  const { slots, conversation, request } = asked;
  const { last } = conversation;
  if (last?.intent === 'plan' && Object.keys(slots).length === 0 && !THE_LIST.test(request.text))
    return { ...asked, slots: { ...last.slots, of_plan: true } };
  if (last?.intent !== 'shop' || last.slots.action !== undefined || slots.action !== undefined) return asked;
  if (STARTS.test(request.text)) return asked;
  const { parts: _several, ...kept } = last.slots;
  const isOther = slots.when !== undefined;
  const basis: Slots = slots.out !== undefined ? last.slots : isOther ? {} : kept;
  return { ...asked, slots: { ...basis, ...slots } };
}
