import type { Book } from '../../nutrition/book.ts';
import { Problem } from '../../nutrition/problem.ts';

export type PlaceKind = 'fridge' | 'freezer' | 'room';

/** A place of the kitchen where food stands. */
export interface KitchenPlace {
  readonly id: string;
  readonly name: string;
  readonly kind: PlaceKind;
}

/** Everyday words for a kind of place; the kitchen's own names come first. */
const KIND_WORDS: readonly (readonly [PlaceKind, RegExp])[] = [
  ['freezer', /^(?:the )?(?:chest |walk[- ]?in |reach[- ]?in )?(?:freezers?|deep freeze)(?: (\d|[a-z]))?$/],
  [
    'fridge',
    /^(?:the )?(?:mini |prep )?(?:fridges?|frig|reefer|refrigerators?|coolers?|walk[- ]?in(?: cooler| fridge)?|reach[- ]?in)(?: (\d|[a-z]))?$/,
  ],
  ['room', /^(?:the )?(?:shelf|shelves|pantry|dry storage|room)(?: (\d|[a-z]))?$/],
];

/**
 * The places these words can mean: one by its id or name, the n-th of a kind ("fridge 2"), or all of a kind ("fridge").
 * @throws Problem `not_found` that lists the places there are.
 */
export function placesCalled(book: Book, words: string): readonly KitchenPlace[] {
  const { locations } = book.settings;
  const said = words.trim().toLowerCase();
  const named = locations.find((place) => place.id === said || place.name.toLowerCase() === said);
  if (named) return [named];
  for (const [kind, pattern] of KIND_WORDS) {
    const match = pattern.exec(said);
    if (!match) continue;
    const ofKind = locations.filter((place) => place.kind === kind);
    const meant = match[1] === undefined ? ofKind : nth(ofKind, match[1]);
    if (meant.length > 0) return meant;
  }
  throw noSuchPlace(book, words);
}

/** "fridge 2" in a kitchen that letters its fridges is the second one, and the other way round. */
function nth(places: readonly KitchenPlace[], mark: string): readonly KitchenPlace[] {
  const index = /\d/.test(mark) ? Number(mark) - 1 : mark.charCodeAt(0) - 97;
  return places.slice(index, index + 1).filter(() => index >= 0);
}

function noSuchPlace(book: Book, words: string): Problem {
  return new Problem(
    'not_found',
    `This kitchen has no place called "${words.slice(0, 40)}".`,
    `Its places are ${book.settings.locations.map((place) => place.name).join(', ')}.`,
  );
}

/** The one place meant by these words (of several the first), or without words the first of this kind. */
export function placeOf(book: Book, words: string | undefined, kind: PlaceKind): KitchenPlace {
  const place =
    words === undefined
      ? book.settings.locations.find((each) => each.kind === kind)
      : placesCalled(book, words)[0];
  if (place) return place;
  throw new Problem(
    'not_found',
    `This kitchen has no ${kind === 'room' ? 'dry shelf' : kind}.`,
    `Its places are ${book.settings.locations.map((each) => each.name).join(', ')}.`,
  );
}

/** Where readings and pieces are that stand in no place of the kitchen; `out` is out of temperature control. */
const ELSEWHERE: ReadonlyMap<string, string> = new Map([
  ['out', 'out of the fridge'],
  ['cooling', 'Cooling'],
  ['receiving', 'Delivery'],
  ['hot_holding', 'Hot holding'],
]);

/** What people call a place by its id. */
export function placeName(book: Book, id: string): string {
  const elsewhere = ELSEWHERE.get(id);
  if (elsewhere !== undefined) return elsewhere;
  return book.settings.locations.find((place) => place.id === id)?.name ?? id;
}
