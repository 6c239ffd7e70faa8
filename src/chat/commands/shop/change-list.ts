import type { ListedItem } from '../../../kitchen/shopping/list-now.ts';
import {
  type ListChange,
  recordCleared,
  recordListed,
  recordTakenOff,
  type ToList,
} from '../../../kitchen/shopping/record-listed.ts';
import { shelfOn } from '../../../kitchen/shopping/shelf-now.ts';
import { shoppingOf } from '../../../kitchen/shopping/shopping.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked } from '../../command.ts';
import { findFood } from '../../find-food.ts';
import { listed } from '../../need-words.ts';
import { boughtMass, pantryWords } from '../../pantry/amount.ts';
import { slotNumber, slotText } from '../../slot-number.ts';
import type { Slots, SlotValue } from '../../slots.ts';
import { deskOf, doingOf } from '../../stock/desk.ts';
import { settled } from '../../stock/merged.ts';
import type { Trip } from './batches.ts';
import { weekTrip } from './games-trip.ts';
import { itemData } from './shopping-data.ts';
import { tripMeant } from './trip.ts';

/** What was said to go on the list or off it, and what had to be assumed about its packages. */
interface Said {
  readonly items: readonly ToList[];
  readonly assumed: readonly string[];
}

/** "add 2 lb honey to the list", "take honey off the list", "clear the list". */
export async function changeList(asked: Asked): Promise<Answered> {
  const desk = deskOf(asked);
  const doing = doingOf(asked, asked.request.nowMs);
  const conversation = settled(asked, 'shop');
  switch (asked.slots.action) {
    case 'clear':
      return { answer: cleared(await recordCleared(desk, doing)), conversation };
    case 'remove': {
      const said = thingsSaid(asked, 'take honey off the list');
      const change = await recordTakenOff(desk, { ...doing, items: said.items });
      return { answer: answerOf(change, said, 'off'), conversation };
    }
    default: {
      const said =
        asked.slots.recipe !== undefined || asked.slots.parts !== undefined
          ? await batchesSaid(asked)
          : thingsSaid(asked, 'add 2 lb honey to the list');
      if ('answer' in said) return said;
      const change = await recordListed(desk, { ...doing, items: said.items });
      return { answer: answerOf(change, said, 'on'), conversation };
    }
  }
}

/** What batches take beyond what is on the shelf and not yet spoken for by the games of the week. */
async function batchesSaid(asked: Asked): Promise<Said | Answered> {
  const trip = await tripMeant(asked);
  if (!trip || 'answer' in trip) return trip ?? thingsSaid(asked, 'add 40 oat bars to the list');
  const { book } = asked.kitchen;
  const week = (await weekTrip(asked))?.batches ?? [];
  const shelf = await shelfOn(deskOf(asked).ledger, book, trip.date);
  const shortOf = (batches: Trip['batches']) =>
    shoppingOf(
      batches.flatMap(({ amounts }) => amounts),
      [],
      shelf,
      book,
    ).lines;
  const withoutIt = new Map(shortOf(week).map(({ food, toBuyG }) => [food.id, toBuyG]));
  const items = shortOf([...week, ...trip.batches]).flatMap(({ food, toBuyG }): ToList[] => {
    const massG = toBuyG - (withoutIt.get(food.id) ?? 0);
    return massG >= 0.001 ? [{ name: food.name, foodId: food.id, massG }] : [];
  });
  return { items, assumed: items.length === 0 ? [`All that ${trip.name} take is on hand.`] : [] };
}

function thingsSaid(asked: Asked, example: string): Said {
  const { slots } = asked;
  const rows: readonly SlotValue[] = Array.isArray(slots.items) ? slots.items : [];
  const said =
    rows.length > 0 ? rows.map((row) => row as Slots) : slots.ingredient === undefined ? [] : [slots];
  if (said.length === 0) throw new Problem('needs_more', 'What?', `Write it like "${example}".`);
  const assumed: string[] = [];
  const items = said.map((row) => {
    const item = itemOf(asked, row);
    if (item.assumed !== undefined) assumed.push(item.assumed);
    return item.item;
  });
  return { items, assumed };
}

function itemOf(asked: Asked, row: Slots): { readonly item: ToList; readonly assumed?: string } {
  const words = slotText(row, 'item');
  if (words !== undefined) return { item: { name: words } };
  const unclear = slotText(row, 'unclear');
  if (unclear !== undefined)
    throw new Problem(
      'needs_more',
      `"${unclear}" has two amounts. Nothing was put down.`,
      'Write one amount for each food, like "add 2 lb honey to the list".',
    );
  const food = findFood(asked.kitchen.book, row.ingredient ?? '');
  const amount = slotNumber(row, 'amount');
  const named = { name: food.name, foodId: food.id };
  if (amount === undefined) return { item: named };
  if (!(amount > 0))
    throw new Problem(
      'bad_quantity',
      `${amount} is no amount to buy.`,
      'Write an amount above 0, like "add 2 lb honey to the list".',
    );
  const { massG, assumed } = boughtMass(food, amount, slotText(row, 'amount_unit') ?? '');
  return { item: { ...named, massG }, ...(assumed === undefined ? {} : { assumed }) };
}

const words = ({ name, massG }: Pick<ListedItem, 'name' | 'massG'>): string =>
  massG === undefined ? name : `${name}, ${pantryWords(massG)}`;

function answerOf(change: ListChange, said: Said, to: 'on' | 'off'): Answered['answer'] {
  const { again, items, before } = change;
  const names = new Set(said.items.map(({ name, foodId }) => foodId ?? name.toLowerCase()));
  const standing = items.filter(({ name, foodId }) => names.has(foodId ?? name.toLowerCase()));
  const was = new Map(before.map((item) => [item.name, item]));
  const title = again
    ? 'Already noted; nothing was put on twice.'
    : standing.length + before.length === 0
      ? 'Nothing had to be put on the list.'
      : to === 'on'
        ? `On the list: ${listed(standing.map(words))}.`
        : standing.length > 0
          ? `Still on the list: ${listed(standing.map(words))}.`
          : `Off the list: ${listed(before.map(words))}.`;
  const more = to === 'on' ? standing.flatMap((item) => moreOf(item, was.get(item.name))) : [];
  const strange = said.items.filter(({ foodId }) => foodId === undefined).map(({ name }) => name);
  return {
    title,
    sections: [
      ...[...more, ...said.assumed].map((text) => ({ kind: 'text' as const, text })),
      ...(to === 'on' && strange.length > 0
        ? [
            {
              kind: 'text' as const,
              text: `No food of this kitchen is called ${listed(strange, 'or')}: it stands there by its words, without package or price.`,
            },
          ]
        : []),
      { kind: 'text', text: `${items.length} on it by hand.` },
    ],
    cautions: [],
    next: ['shopping list', 'undo'].map((says) => ({ label: says, says })),
    audience: 'channel',
    data: { noted: !again, items: items.map(itemData) },
  };
}

/** What stood there before adds up: two people may need the same thing. */
function moreOf(item: ListedItem, before: ListedItem | undefined): string[] {
  if (!before) return [];
  const had = before.massG === undefined ? 'without an amount' : pantryWords(before.massG);
  return [`${item.name} was on it already, ${had}: it adds up.`];
}

function cleared({ again, before }: ListChange): Answered['answer'] {
  return {
    title: again
      ? 'Already cleared.'
      : before.length === 0
        ? 'Nothing was on the list by hand.'
        : `Cleared: ${before.length} off the list.`,
    sections: [
      ...(before.length > 0
        ? [{ kind: 'list' as const, heading: 'Was on it', items: before.map(words) }]
        : []),
      { kind: 'text', text: 'What games need is worked out anew each time; it goes when the pantry has it.' },
    ],
    cautions: [],
    next: ['undo', 'shopping list'].map((says) => ({ label: says, says })),
    audience: 'channel',
    data: { noted: !again, cleared: before.map(itemData) },
  };
}
