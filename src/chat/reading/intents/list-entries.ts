import type { SlotValue } from '../../slots.ts';
import type { Atom } from '../atoms.ts';
import type { Lexed } from '../lexed.ts';
import { nameOf } from '../slots/names.ts';
import { numberOf } from '../slots/numbers.ts';

type Entry = { readonly [name: string]: SlotValue };

/** Words of a request around what goes on the list. */
const AROUND = new Set(
  `add put take remove delete drop cross scratch order need want get on to onto off from of list shopping grocery
  groceries it them that this those these the our my a an some more also please pls can could would you we i us me just
  out up for too thanks thx in order`.split(/\s+/),
);
const SHELF_NUTRIENT = new Set(['sugars', 'fiber']);

/**
 * The things a message names for the list, one entry each: a food with its amount, or the words as typed where the
 * kitchen has no such food. Two numbers for one thing are told apart as unclear, so that none is recorded half understood.
 */
export function listEntries({ atoms }: Lexed): Entry[] {
  return partsOf(atoms).flatMap((part) => {
    const entry = entryOf(part);
    return entry ? [entry] : [];
  });
}

function partsOf(atoms: readonly Atom[]): Atom[][] {
  const parts: Atom[][] = [[]];
  for (const atom of atoms) {
    if (atom.sym === ',' || atom.sym === 'and' || atom.sym === '&' || atom.sym === '+') parts.push([]);
    else parts.at(-1)?.push(atom);
  }
  return parts;
}

function entryOf(part: readonly Atom[]): Entry | undefined {
  const kept = part.filter(({ sym }) => !AROUND.has(sym) && sym !== 'W' && !/^[?./;]$/.test(sym));
  const food = kept.find(
    ({ sym, id }) => sym === 'F' || sym === 'Y' || (sym === 'M' && SHELF_NUTRIENT.has(id ?? '')),
  );
  if (!food) {
    const words = kept
      .map(({ text }) => text)
      .join(' ')
      .trim();
    return words === '' ? undefined : { item: words };
  }
  const ingredient = food.sym === 'M' ? 'sugar' : nameOf(food);
  const numbers = kept.filter(({ sym }) => sym === 'Q' || sym === 'N');
  const [number] = numbers;
  if (!number) return { ingredient };
  if (numbers.length > 1) return { ingredient, unclear: kept.map(({ text }) => text).join(' ') };
  return { ingredient, amount: numberOf(number), amount_unit: number.unit ?? '' };
}
