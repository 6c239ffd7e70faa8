import { type PackedBook, readBookImage } from './book-image.ts';
import { requireFolder } from './folder.ts';

/**
 * The book at start-up: from the image of the build when only the built-in folder is cooked from and it has not
 * changed since, else read and checked file by file. Both give the same book; only the image has something beside it.
 * @param image where the build put it, `dist/book.json`; left out, the folder is always read.
 * @throws Problem `bad_option` for a folder that is not there.
 */
export async function openBook(directories: readonly string[], image?: string): Promise<PackedBook> {
  const [only, ...others] = directories;
  if (image !== undefined && only !== undefined && others.length === 0) {
    const ready = readBookImage(requireFolder(only), image);
    if (ready) return ready;
  }
  const { loadBook } = await import('./load-book.ts');
  return { book: loadBook(directories), beside: undefined };
}
