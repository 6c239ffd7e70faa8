import { fileURLToPath } from 'node:url';
import { openBook } from './book/open-book.ts';
import type { Clock, Kitchen } from './kitchen/kitchen.ts';
import { noMemory } from './kitchen/no-memory.ts';

/** The recipes and foods that come along; the same way from `src` and from `dist`. */
const BUILT_IN = fileURLToPath(new URL('../recipes', import.meta.url));
/** Where the build leaves the built-in book, ready to use. */
const IMAGE = fileURLToPath(new URL('../dist/book.json', import.meta.url));

/**
 * The kitchen to answer from: the built-in folder, with the kitchen's own on top.
 * @throws Problem `bad_option` when the kitchen's own folder is not there.
 */
export async function openKitchen(
  clock: Clock,
  ownFolder?: string,
  memory: Pick<Kitchen, 'ledgers' | 'games' | 'reminders'> = noMemory,
): Promise<Kitchen> {
  const book = await openBook(ownFolder === undefined ? [BUILT_IN] : [BUILT_IN, ownFolder], IMAGE);
  const { ledgers, games, reminders } = memory;
  return { book, clock, ledgers, games, reminders };
}
