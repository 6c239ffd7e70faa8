import type { Desk } from '../../kitchen/stock/desk.ts';
import type { TakenItem, TakenPieces, TakingItem } from '../../kitchen/stock/record-taken.ts';
import { sayDate, sayTime, wallTimeOf } from '../../kitchen/time/zone.ts';
import { Problem } from '../../nutrition/problem.ts';
import type { Asked } from '../command.ts';
import type { Slots } from '../slots.ts';
import { oneRecipe, whichSaid } from './which.ts';
import { holdingData, piecesOf } from './words.ts';

/** What is to be taken, kind by kind; `undefined` when it is not clear which kind: ask. */
export async function itemsTaken(asked: Asked, desk: Desk): Promise<readonly TakingItem[] | undefined> {
  const holdings = await desk.ledger.holdings();
  const items: TakingItem[] = [];
  for (const part of partsOf(asked)) {
    const which = oneRecipe(part, holdings, await whichSaid(part, desk));
    if (which === undefined) return undefined;
    items.push({ which, pieces: piecesSaid(part) });
  }
  return items;
}

function partsOf(asked: Asked): readonly Asked[] {
  const { items, ...rest } = asked.slots;
  if (!Array.isArray(items)) return [asked];
  return items.map((item: Slots) => ({
    ...asked,
    slots: { ...rest, unit: undefined, recipe: undefined, ...item },
  }));
}

function piecesSaid({ slots }: Asked): number | 'all' {
  const { quantity } = slots;
  if (typeof quantity === 'number') return quantity;
  if (quantity === 'all' || (quantity === undefined && (slots.batch ?? slots.lot) !== undefined))
    return 'all';
  throw new Problem(
    'needs_more',
    'How many?',
    'Write a number, like "served 12 oat bars", or "all oat bars".',
  );
}

/**
 * "12 oat bars served from B1 (made Mon Nov 2, use by Sun Nov 8)": pieces, verb, batches.
 */
export function takenLine(verb: string, item: TakenItem): string {
  const first = item.taken[0];
  if (!first) return `Nothing ${verb}.`;
  const from = item.taken.map(({ holding, pieces }) => {
    const { batch, useBy } = holding;
    const until = useBy === undefined ? '' : `, use by ${sayDate(useBy)}`;
    const count = item.taken.length > 1 ? `${pieces} from ` : '';
    return `${count}${batch.code} (made ${sayDate(batch.madeDate)}${until})`;
  });
  const isMixed = new Set(item.taken.map(({ holding }) => holding.batch.recipeId)).size > 1;
  const what = isMixed ? `${item.pieces} pieces` : piecesOf(item.pieces, first.holding.batch);
  return `${what} ${verb}: ${from.join(', ')}.`;
}

export const takenData = (item: TakenItem): Record<string, unknown> => ({
  pieces: item.pieces,
  left: item.left,
  taken: item.taken.map(({ holding, pieces }) => ({ ...holdingData(holding), pieces })),
});

/** "Mon Nov 2, 9:30 am": when an entry happened. */
export function entryTime(asked: Asked, atMs: number): string {
  const wall = wallTimeOf(atMs, asked.kitchen.book.settings.timeZone);
  return `${sayDate(wall.date)}, ${sayTime(wall.time)}`;
}

/** Recipes that pieces were taken from. */
export const recipesTaken = (taken: TakenPieces): string[] => [
  ...new Set(taken.items.flatMap((item) => item.taken.map(({ holding }) => holding.batch.recipeId))),
];
