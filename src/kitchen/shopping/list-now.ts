import type { ToldItem } from '../pantry/pantry.ts';

/** One thing that stands on the list by hand. */
export interface ListedItem {
  readonly name: string;
  readonly foodId?: string;
  /** All that was asked for; absent when nobody said how much. */
  readonly massG?: number;
  /** Who put it there and when, oldest first. */
  readonly added: readonly { readonly who: string; readonly atMs: number }[];
}

/** Less is the rounding of milligrams. */
const NOTHING_G = 0.0005;

/**
 * What stands on the list after all that was told of it, oldest first: amounts of the same thing add up, what was
 * bought comes off them, and what was taken off is gone.
 */
export function listNow(notes: readonly ToldItem[]): readonly ListedItem[] {
  const items = new Map<string, ListedItem>();
  for (const note of notes) {
    const before = items.get(note.name);
    const after = note.wanted ? withNote(before, note) : undefined;
    if (after) items.set(note.name, after);
    else items.delete(note.name);
  }
  return [...items.values()];
}

function withNote(before: ListedItem | undefined, note: ToldItem): ListedItem | undefined {
  const massG = sum(before?.massG, note.massG);
  if (massG !== undefined && massG <= NOTHING_G) return undefined;
  const isMore = note.massG === undefined || note.massG > 0;
  return {
    name: note.name,
    ...(note.foodId === undefined ? {} : { foodId: note.foodId }),
    ...(massG === undefined ? {} : { massG }),
    added: [...(before?.added ?? []), ...(isMore ? [{ who: note.who, atMs: note.atMs }] : [])],
  };
}

const sum = (a: number | undefined, b: number | undefined): number | undefined =>
  a === undefined ? b : b === undefined ? a : a + b;
