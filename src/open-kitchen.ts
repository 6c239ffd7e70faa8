import { fileURLToPath } from 'node:url';
import { openBook } from './book/open-book.ts';
import { useWords, type WordTable } from './chat/reading/vocabulary.ts';
import type { Clock, Kitchen } from './kitchen/kitchen.ts';
import { noMemory } from './kitchen/no-memory.ts';

/** The recipes and foods that come along; the same way from `src` and from `dist`. */
const BUILT_IN = fileURLToPath(new URL('../recipes', import.meta.url));
/** Where the build leaves the built-in book, ready to use: beside itself. Run from the sources there is none. */
const IMAGE = fileURLToPath(new URL('book.json', import.meta.url));

/**
 * The kitchen to answer from: the built-in folder, with the kitchen's own on top.
 * @throws Problem `bad_option` when the kitchen's own folder is not there.
 */
export async function openKitchen(
  clock: Clock,
  ownFolder?: string,
  memory: Pick<Kitchen, 'ledgers' | 'games' | 'reminders' | 'rosters' | 'remembers'> = noMemory,
): Promise<Kitchen> {
  const { book, beside } = await openBook(
    ownFolder === undefined ? [BUILT_IN] : [BUILT_IN, ownFolder],
    IMAGE,
  );
  if (beside !== undefined) useWords(book, beside as WordTable);
  const { ledgers, games, reminders, rosters, remembers } = memory;
  return { book, clock, ledgers, games, reminders, rosters, remembers };
}
