import { nameKey } from '../../nutrition/name-key.ts';
import { Problem } from '../../nutrition/problem.ts';
import { checkMassG } from '../pantry/amounts.ts';
import type { ListNote } from '../pantry/pantry.ts';
import { type Desk, type Doing, eventOf, recordedBefore } from '../stock/desk.ts';
import type { LedgerWriter } from '../stock/ledger.ts';
import { type ListedItem, listNow } from './list-now.ts';

/** Something for the list, or off it: the food where the kitchen knows one, else the words alone. */
export interface ToList {
  readonly name: string;
  readonly foodId?: string;
  readonly massG?: number;
}

/** The list after a change. */
export interface ListChange {
  readonly again: boolean;
  readonly items: readonly ListedItem[];
  /** What stood on the list before, of the things that changed. */
  readonly before: readonly ListedItem[];
}

/** Puts things on the list; more of what is on it already adds up. */
export function recordListed(desk: Desk, told: Doing & { readonly items: readonly ToList[] }) {
  for (const { massG } of told.items) if (massG !== undefined) checkMassG(massG);
  return change(desk, told, () => told.items.map((item) => ({ ...item, wanted: true })));
}

/**
 * Takes things off the list, or that much of them.
 * @throws Problem `not_found` for what is not on it.
 */
export function recordTakenOff(desk: Desk, told: Doing & { readonly items: readonly ToList[] }) {
  for (const { massG } of told.items) if (massG !== undefined) checkMassG(massG);
  return change(desk, told, (standing) =>
    told.items.map((item) => {
      const found = standing.find((each) => isSame(each, item));
      if (!found) throw notListed(item, standing);
      return takenOff(found, item.massG);
    }),
  );
}

/** Takes everything off that was put on by hand. */
export const recordCleared = (desk: Desk, told: Doing) =>
  change(desk, told, (standing) => standing.map((item) => takenOff(item, undefined)));

/** What a delivery takes off the list: all of a food nobody named an amount of, else as much as came. */
export async function boughtNotes(
  ledger: LedgerWriter,
  came: readonly { readonly foodId: string; readonly massG: number }[],
): Promise<ListNote[]> {
  return listNow(await ledger.listNotes()).flatMap((item) => {
    const own = came.filter(({ foodId }) => foodId === item.foodId);
    return own.length > 0
      ? [
          takenOff(
            item,
            own.reduce((sum, { massG }) => sum + massG, 0),
          ),
        ]
      : [];
  });
}

/** A gram more or less is how scales differ. */
const SCALE_G = 1;

function takenOff({ name, foodId, massG }: ListedItem, offG: number | undefined): ListNote {
  const off = { name, ...(foodId === undefined ? {} : { foodId }) };
  const isAll = offG === undefined || massG === undefined || massG - offG < SCALE_G;
  return isAll ? { ...off, wanted: false } : { ...off, massG: -offG, wanted: true };
}

/** The same food, or the same words. */
const isSame = (listed: ListedItem, said: ToList): boolean =>
  (said.foodId !== undefined && listed.foodId === said.foodId) || nameKey(listed.name) === nameKey(said.name);

function notListed({ name }: ToList, standing: readonly ListedItem[]): Problem {
  const there = standing.map((item) => item.name.toLowerCase());
  return new Problem(
    'not_found',
    `${name} is not on the list by hand.`,
    there.length > 0
      ? `On it: ${there.slice(0, 8).join(', ')}.`
      : 'Nothing is on it by hand. What games need falls away when the pantry has it: "counted 5 lb honey".',
  );
}

async function change(
  desk: Desk,
  doing: Doing,
  notesFor: (standing: readonly ListedItem[]) => readonly ListNote[],
): Promise<ListChange> {
  return desk.ledger.write(async (ledger) => {
    const standing = listNow(await ledger.listNotes());
    if (await recordedBefore(ledger, doing.requestKey)) return { again: true, items: standing, before: [] };
    const list = merged(notesFor(standing));
    if (list.length > 0) await ledger.append({ event: eventOf(ledger, desk, 'listed', doing), list });
    const names = new Set(list.map(({ name }) => name));
    return {
      again: false,
      items: listNow(await ledger.listNotes()),
      before: standing.filter(({ name }) => names.has(name)),
    };
  });
}

/** One note a name, however often a message names it. */
function merged(notes: readonly ListNote[]): ListNote[] {
  const byName = new Map<string, ListNote>();
  for (const note of notes) {
    const before = byName.get(note.name);
    const massG =
      before?.massG !== undefined && note.massG !== undefined
        ? before.massG + note.massG
        : (note.massG ?? before?.massG);
    byName.set(note.name, { ...note, ...(massG === undefined ? {} : { massG }) });
  }
  return [...byName.values()];
}
