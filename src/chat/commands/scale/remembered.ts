import type { Book } from '../../../nutrition/book.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import type { Answer } from '../../answer.ts';
import type { Slots } from '../../slots.ts';

/** A batch with the answer that tells it. */
export interface ToldBatch {
  readonly pieces: number;
  readonly answer: Answer;
}

/** Of one recipe; a kitchen asks for the same few dozen batches all week. */
const MOST_BATCHES = 50;

const told = new WeakMap<Book, WeakMap<Recipe, Map<string, ToldBatch>>>();

/**
 * The same batch of the same book is worked out once: it follows from the card, the foods and what was said alone. A book
 * that changes is another book.
 */
export function remembered(book: Book, recipe: Recipe, slots: Slots, work: () => ToldBatch): ToldBatch {
  const batches = batchesOf(book, recipe);
  const key = JSON.stringify(slots);
  const known = batches.get(key);
  if (known) return known;
  if (batches.size >= MOST_BATCHES) batches.clear();
  const batch = work();
  batches.set(key, batch);
  return batch;
}

function batchesOf(book: Book, recipe: Recipe): Map<string, ToldBatch> {
  const ofBook = told.get(book) ?? new WeakMap<Recipe, Map<string, ToldBatch>>();
  told.set(book, ofBook);
  const batches = ofBook.get(recipe) ?? new Map<string, ToldBatch>();
  ofBook.set(recipe, batches);
  return batches;
}
