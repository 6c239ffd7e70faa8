import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
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
  readonly settings: Omit<Book['settings'], 'par'> & { readonly par: readonly (readonly [string, number])[] };
  readonly foods: readonly Food[];
  readonly recipes: readonly Recipe[];
  readonly problems: Book['problems'];
}

/** Names and contents of all files of a kitchen folder as one hash. */
export function folderFingerprint(directory: string): string {
  const hash = createHash('sha256');
  for (const file of filesIn(directory, BOOK_FILE)) {
    hash.update(relative(directory, file)).update('\0').update(readFileSync(file)).update('\0');
  }
  return hash.digest('hex');
}

/** Writes the book of one folder where `readBookImage` finds it. */
export function writeBookImage(book: Book, directory: string, file: string): void {
  const image = {
    fingerprint: folderFingerprint(directory),
    settings: { ...book.settings, par: [...book.settings.par] },
    foods: [...book.foods.values()],
    recipes: [...book.recipes.values()],
    problems: book.problems,
  };
  writeFileSync(file, JSON.stringify(image));
}

/** The book of a folder from its image; `undefined` when there is none or the folder has changed since. */
export function readBookImage(directory: string, file: string): Book | undefined {
  try {
    const image = JSON.parse(readFileSync(file, 'utf8')) as BookImage;
    if (image.fingerprint !== folderFingerprint(directory)) return undefined;
    return {
      settings: { ...image.settings, par: new Map(image.settings.par) },
      foods: new Map(image.foods.map((food) => [food.id, food])),
      recipes: new Map(image.recipes.map((recipe) => [recipe.id, recipe])),
      problems: image.problems,
    };
  } catch {
    // An image is a copy; whatever is wrong with it, the folder itself is still there to be read.
    return undefined;
  }
}
