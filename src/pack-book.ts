import { writeBookImage } from './book/book-image.ts';
import { requireFolder } from './book/folder.ts';
import { loadBook } from './book/load-book.ts';
import { compileWords } from './chat/reading/vocabulary/compile-words.ts';

/** What the build calls: the image of the built-in folder beside the program, and the words its messages are read with. */
export function packBook(directory: string, file: string): void {
  const book = loadBook([directory]);
  writeBookImage({ book, beside: compileWords(book) }, requireFolder(directory), file);
}
