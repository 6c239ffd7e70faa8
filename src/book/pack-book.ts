import { writeBookImage } from './book-image.ts';
import { requireFolder } from './folder.ts';
import { loadBook } from './load-book.ts';

/** What the build calls: the image of the built-in folder beside the program. */
export function packBook(directory: string, file: string): void {
  writeBookImage(loadBook([directory]), requireFolder(directory), file);
}
