import type { Book } from '../nutrition/book.ts';
import type { Food } from '../nutrition/food.ts';
import { Problem } from '../nutrition/problem.ts';
import { findersOf } from './finders.ts';
import type { SlotValue } from './slots.ts';

const LONGEST_WORDS = 80;

/** The food an id or a name stands for; `undefined` when no food is called exactly that. */
export const foodCalled = (book: Book, words: string): Food | undefined =>
  book.foods.get(words) ?? findersOf(book).foods.find(words.slice(0, LONGEST_WORDS));

/** The food a slot names. Throws `unknown_food` with the nearest three. */
export function findFood(book: Book, slot: SlotValue): Food {
  const words = String(slot).slice(0, LONGEST_WORDS);
  const food = foodCalled(book, words);
  if (food) return food;
  const near = findersOf(book).foods.nearest(words, 3);
  throw new Problem(
    'unknown_food',
    `This kitchen has no food "${words}".`,
    near.length > 0 ? `Did you mean ${near.map((f) => f.name).join(', ')}?` : 'Write a food, like "2% milk".',
  );
}
