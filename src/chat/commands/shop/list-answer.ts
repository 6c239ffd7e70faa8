import { listNow } from '../../../kitchen/shopping/list-now.ts';
import { shelfOn } from '../../../kitchen/shopping/shelf-now.ts';
import { shoppingOf } from '../../../kitchen/shopping/shopping.ts';
import type { Answer } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { findFood } from '../../find-food.ts';
import { todayOf } from '../../games/when.ts';
import { deskOf } from '../../stock/desk.ts';
import { weekTrip } from './games-trip.ts';
import { byHand, shoppingAnswer } from './shopping-answer.ts';
import { itemData } from './shopping-data.ts';

/** The list: what was put on by hand, and what the games of the next seven days need beyond what is on hand. */
export async function listAnswer(asked: Asked): Promise<Answer> {
  const { book } = asked.kitchen;
  const { ledger } = deskOf(asked);
  const items = listNow(await ledger.listNotes());
  const trip = await weekTrip(asked);
  const shelf = await shelfOn(ledger, book, trip?.date ?? todayOf(asked));
  const needs = trip?.batches.flatMap(({ amounts }) => amounts) ?? [];
  const shopping = shoppingOf(needs, items, shelf, book);
  const data = { items: items.map(itemData), games: trip !== undefined };
  const { ingredient } = asked.slots;
  if (ingredient !== undefined) return oneThing(asked, findFood(book, ingredient).id, shopping, data);
  if (items.length === 0 && needs.length === 0) {
    return {
      title: 'Nothing is on the list.',
      sections: [
        {
          kind: 'text',
          text: trip
            ? 'Made pieces in stock cover the games of the next seven days.'
            : 'No game with food planned is known for the next seven days.',
        },
      ],
      cautions: [],
      next: ['shop for 40 oat bars', 'add 2 lb honey to the list'].map((says) => ({ label: says, says })),
      audience: 'channel',
      data: { ...data, totalCents: 0, lines: [], others: [] },
    };
  }
  return shoppingAnswer(asked, {
    name: 'the list',
    shopping,
    shelf,
    lines: [...(trip?.lines ?? []), ...(items.length > 0 ? [`${items.length} put on by hand`] : [])],
    notes: trip?.notes ?? [],
    next: ['what is in the pantry', 'budget left'].map((says) => ({ label: says, says })),
    data,
  });
}

/** "is honey on the list": by hand, for games, or not. */
function oneThing(
  asked: Asked,
  foodId: string,
  { lines }: ReturnType<typeof shoppingOf>,
  data: Record<string, unknown>,
): Answer {
  const line = lines.find(({ food }) => food.id === foodId);
  const name = asked.kitchen.book.foods.get(foodId)?.name ?? foodId;
  const count =
    line?.packages && line.toBuyG + (line.listed ? 1 : 0) > 0
      ? `: ${line.packages.count} x ${line.packages.packageName}`
      : '';
  const isOn = line !== undefined && (line.toBuyG > 0 || line.listed !== undefined);
  const why = [
    ...(line?.listed ? [byHand(asked, line.listed)] : []),
    ...(line && line.neededG > 0 ? ['needed for the games of the next seven days'] : []),
  ].join('; ');
  return {
    title: isOn ? `${name} is on the list${count}; ${why}.` : `${name} is not on the list.`,
    sections: [],
    cautions: [],
    next: [isOn ? 'shopping list' : `add ${name.toLowerCase()} to the list`].map((says) => ({
      label: says,
      says,
    })),
    audience: 'channel',
    data: { ...data, food: foodId, isOnList: isOn },
  };
}
