import type { Book } from '../nutrition/book.ts';
import type { Food } from '../nutrition/food.ts';
import { Problem } from '../nutrition/problem.ts';
import type { SlotValue } from './slots.ts';

const LONGEST_WORDS = 80;

const plain = (words: string): string =>
  words
    .toLowerCase()
    .replace(/[^\p{L}\p{N}%]+/gu, ' ')
    .trim();

/** The food an id or a name stands for; `undefined` when no food is called exactly that. */
export function foodCalled(book: Book, words: string): Food | undefined {
  const byId = book.foods.get(words);
  if (byId) return byId;
  const said = plain(words.slice(0, LONGEST_WORDS));
  for (const food of book.foods.values()) {
    if ([food.id, food.name, ...food.aliases].some((name) => plain(name) === said)) return food;
  }
  return undefined;
}

/** The food a slot names. Throws `unknown_food` with the nearest three. */
export async function findFood(book: Book, slot: SlotValue): Promise<Food> {
  const words = String(slot);
  const food = foodCalled(book, words);
  if (food) return food;
  const near = await nearestFoods(book, words);
  throw new Problem(
    'unknown_food',
    `This kitchen has no food "${words.slice(0, LONGEST_WORDS)}".`,
    near.length > 0 ? `Did you mean ${near.join(', ')}?` : 'Write a food, like "2% milk".',
  );
}

async function nearestFoods(book: Book, words: string): Promise<string[]> {
  const { default: MiniSearch } = await import('minisearch');
  const index = new MiniSearch({
    fields: ['name', 'aliases'],
    searchOptions: { prefix: true, fuzzy: 0.3, boost: { name: 2 } },
  });
  index.addAll(
    [...book.foods.values()].map((f) => ({ id: f.id, name: f.name, aliases: f.aliases.join(' ') })),
  );
  return index
    .search(words.slice(0, LONGEST_WORDS))
    .slice(0, 3)
    .flatMap((hit) => book.foods.get(String(hit.id))?.name ?? []);
}
