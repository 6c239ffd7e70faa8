import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { relative } from 'node:path';
import type { Book } from '../nutrition/book.ts';
import type { Food } from '../nutrition/food.ts';
import type { Recipe } from '../nutrition/recipe.ts';
import { filesIn } from './folder.ts';

/** Every file a book is read from. */
const BOOK_FILE = /\.(?:ya?ml|csv)$/i;

/** A book as the build leaves it beside the program, so that starting need not parse and check it again. */
interface BookImage {
  /** Of the folder it was read from; with another content the image is out of date. */
  readonly fingerprint: string;
  /** Sizes and times of the same files; while these hold, the contents need not be read again. */
  readonly untouched: string | undefined;
  readonly settings: Omit<Book['settings'], 'par'> & { readonly par: readonly (readonly [string, number])[] };
  readonly foods: readonly Food[];
  readonly recipes: readonly Recipe[];
  readonly problems: Book['problems'];
  readonly beside: unknown;
}

/** A book from its image, with what the build packed beside it: made from the same book, read by whoever made it. */
export interface PackedBook {
  readonly book: Book;
  readonly beside: unknown;
}

/** Names and contents of all files of a kitchen folder as one hash. */
export function folderFingerprint(directory: string): string {
  // Loaded only here: most starts find the folder untouched.
  const { createHash } = createRequire(import.meta.url)('node:crypto') as typeof import('node:crypto');
  const hash = createHash('sha256');
  for (const file of filesIn(directory, BOOK_FILE)) {
    hash.update(relative(directory, file)).update('\0').update(readFileSync(file)).update('\0');
  }
  return hash.digest('hex');
}

/** A file changed this shortly before the image was made may change again within the same tick of its times. */
const SETTLED_MS = 2_000;

/**
 * Names, sizes and times of all files of a kitchen folder; the time of the last change of an inode cannot be set back
 * by a copy. `undefined` when a file has changed just now.
 */
function folderState(directory: string, nowMs = Number.POSITIVE_INFINITY): string | undefined {
  let state = '';
  for (const file of filesIn(directory, BOOK_FILE)) {
    const { size, mtimeMs, ctimeMs } = statSync(file);
    if (Math.max(mtimeMs, ctimeMs) > nowMs - SETTLED_MS) return undefined;
    state += `${relative(directory, file)} ${size} ${mtimeMs} ${ctimeMs}\n`;
  }
  return state;
}

/** Only ASCII, so that it is held one byte a character when it is read. */
const asciiJson = (value: unknown): string =>
  JSON.stringify(value).replace(
    /[^\x20-\x7e]/g,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );

/** Writes the book of one folder where `readBookImage` finds it. */
export function writeBookImage(
  { book, beside }: PackedBook,
  directory: string,
  file: string,
  nowMs = Date.now(),
): void {
  const image = {
    fingerprint: folderFingerprint(directory),
    untouched: folderState(directory, nowMs),
    settings: { ...book.settings, par: [...book.settings.par] },
    foods: [...book.foods.values()],
    recipes: [...book.recipes.values()],
    problems: book.problems,
    beside,
  };
  writeFileSync(file, asciiJson(image));
}

/** The book of a folder from its image; `undefined` when there is none or the folder has changed since. */
export function readBookImage(directory: string, file: string): PackedBook | undefined {
  try {
    const image = JSON.parse(readFileSync(file, 'latin1')) as BookImage;
    const isCurrent =
      image.untouched === folderState(directory) || image.fingerprint === folderFingerprint(directory);
    if (!isCurrent) return undefined;
    const book: Book = {
      settings: { ...image.settings, par: new Map(image.settings.par) },
      foods: new Map(image.foods.map((food) => [food.id, food])),
      recipes: new Map(image.recipes.map((recipe) => [recipe.id, recipe])),
      problems: image.problems,
    };
    return { book, beside: image.beside };
  } catch {
    // An image is a copy; whatever is wrong with it, the folder itself is still there to be read.
    return undefined;
  }
}
