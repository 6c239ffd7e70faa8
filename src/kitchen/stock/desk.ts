import type { Book } from '../../nutrition/book.ts';
import { Problem } from '../../nutrition/problem.ts';
import type { Ledger } from './ledger.ts';

/** What every stock action needs: the ledger to write in, the kitchen's book, and the present instant. */
export interface Desk {
  readonly ledger: Ledger;
  readonly book: Book;
  readonly nowMs: number;
}

/** Who did it and when; `requestKey` makes the same request count once. */
export interface Doing {
  readonly who: string;
  readonly atMs: number;
  readonly requestKey?: string;
}

const MOST_PIECES = 100_000;
const LATEST_PAST_MS = 7 * 24 * 3_600_000;
const CLOCK_SLACK_MS = 60_000;

/** A count of pieces: whole, above zero, within what a kitchen makes. */
export function checkPieces(pieces: number): number {
  if (Number.isInteger(pieces) && pieces > 0 && pieces <= MOST_PIECES) return pieces;
  throw new Problem(
    'bad_quantity',
    `${Number.isFinite(pieces) ? pieces : 'That'} is not a count of pieces.`,
    'Write a whole number above zero, like "served 12 oat bars".',
  );
}

/** When it happened: not in the future, and not so long ago that it belongs to another week's record. */
export function checkWhen(atMs: number, nowMs: number): number {
  if (atMs > nowMs + CLOCK_SLACK_MS) {
    throw new Problem(
      'bad_quantity',
      'That time has not come yet.',
      'Give the time it happened, or leave it out for now.',
    );
  }
  if (atMs < nowMs - LATEST_PAST_MS) {
    throw new Problem(
      'bad_quantity',
      'That was more than seven days ago.',
      'Log what happened in the last seven days; tell the dietitian about older food.',
    );
  }
  return atMs;
}

/** The kitchen's place by id or name; without one, its first place of this kind. */
export function placeOf(
  book: Book,
  location: string | undefined,
  kind: 'fridge' | 'freezer' | 'room',
): { readonly id: string; readonly name: string; readonly kind: 'fridge' | 'freezer' | 'room' } {
  const { locations } = book.settings;
  const found =
    location === undefined
      ? locations.find((place) => place.kind === kind)
      : locations.find(
          (place) => place.id === location || place.name.toLowerCase() === location.toLowerCase(),
        );
  if (found) return found;
  throw new Problem(
    'not_found',
    location === undefined
      ? `This kitchen has no ${kind}.`
      : `This kitchen has no place called "${location}".`,
    `Its places are ${locations.map((place) => place.name).join(', ')}.`,
  );
}
