import type { Book } from '../../nutrition/book.ts';
import { labelStandings } from '../pantry/book-as-told.ts';
import { openedLeft } from '../pantry/opened-left.ts';
import type { LedgerView } from '../stock/ledger.ts';
import type { CalendarDate } from '../time/zone.ts';

/** The pantry as somebody who goes shopping wants to know it. */
export interface Shelf {
  /** Foods that were ever received or counted: of the others nobody knows what is there. */
  readonly known: ReadonlySet<string>;
  readonly heldG: ReadonlyMap<string, number>;
  /** Of what is held: opened, and past its date on the day it is wanted. */
  readonly pastDateG: ReadonlyMap<string, number>;
  /** Foods whose label changed and that nobody has checked yet. */
  readonly uncheckedLabels: ReadonlySet<string>;
}

export const EMPTY_SHELF: Shelf = {
  known: new Set(),
  heldG: new Map(),
  pastDateG: new Map(),
  uncheckedLabels: new Set(),
};

/** Reads what is on the shelf and can still be used on `date`. */
export async function shelfOn(ledger: LedgerView, book: Book, date: CalendarDate): Promise<Shelf> {
  const pastDateG = new Map<string, number>();
  for (const { foodId, useBy, massG } of await openedLeft(ledger, book)) {
    if (useBy !== undefined && useBy < date) add(pastDateG, foodId, massG);
  }
  const heldG = new Map<string, number>();
  for (const { foodId, massG } of await ledger.pantry()) add(heldG, foodId, massG);
  const labels = labelStandings(await ledger.labelNotes());
  return {
    known: await ledger.pantryFoods(),
    heldG,
    pastDateG,
    uncheckedLabels: new Set([...labels.values()].flatMap(({ foodId, isOpen }) => (isOpen ? [foodId] : []))),
  };
}

const add = (sums: Map<string, number>, foodId: string, massG: number): void => {
  sums.set(foodId, (sums.get(foodId) ?? 0) + massG);
};
