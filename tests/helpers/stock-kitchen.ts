import type { Desk } from '../../src/kitchen/stock/desk.ts';
import { type MadeBatch, recordMade } from '../../src/kitchen/stock/record-made.ts';
import { calendarDate, clockTime, instantOf } from '../../src/kitchen/time/zone.ts';
import type { Book } from '../../src/nutrition/book.ts';
import type { Recipe } from '../../src/nutrition/recipe.ts';
import { openKitchen } from '../../src/open-kitchen.ts';
import { ledgersIn } from '../../src/store/ledger.ts';
import { freshDatabase } from './database.ts';

export const book: Book = (await openKitchen({ nowMs: () => 0 })).book;
export const zone = book.settings.timeZone;

/** The instant of "2026-11-02 09:30" in the kitchen's zone. */
export function at(wall: string): number {
  const [date = '', time = '00:00'] = wall.split(' ');
  return instantOf({ date: calendarDate(date), time: clockTime(time) }, zone);
}

export function recipe(id: string): Recipe {
  const found = book.recipes.get(id);
  if (!found) throw new Error(`the demo kitchen has no ${id}`);
  return found;
}

/** A fresh ledger and a desk at any time of it. */
export async function stockRoom() {
  const database = await freshDatabase();
  const ledgers = ledgersIn(database, () => Date.now());
  const desk = (wall: string, workspace = 'W1'): Desk => ({
    ledger: ledgers(workspace),
    book,
    nowMs: at(wall),
  });
  const make = async (
    wall: string,
    pieces = 40,
    more: { id?: string; location?: string; who?: string; requestKey?: string } = {},
  ): Promise<MadeBatch> => {
    const { id = 'oat-bars', who = 'IN-01', location, requestKey } = more;
    const { made } = await recordMade(desk(wall), {
      who,
      atMs: at(wall),
      ...(requestKey === undefined ? {} : { requestKey }),
      batches: [{ recipe: recipe(id), pieces, lots: [], ...(location === undefined ? {} : { location }) }],
    });
    const [first] = made;
    if (!first) throw new Error('nothing was made');
    return first;
  };
  return { database, ledgers, desk, make };
}

export type StockRoom = Awaited<ReturnType<typeof stockRoom>>;
