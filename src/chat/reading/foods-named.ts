import type { Book } from '../../nutrition/book.ts';
import { lex } from './lexed.ts';

/**
 * The foods a message names one after the other, in its own words, each food once.
 * @example foodsNamed('macros carrots and hummus', book, nowMs) // ['carrots', 'hummus']
 */
export function foodsNamed(text: string, book: Book, nowMs: number): string[] {
  const words = new Map<string, string>();
  for (const { sym, id, word } of lex(text, book, nowMs).atoms)
    if (sym === 'F' && id && !words.has(id)) words.set(id, word);
  return [...words.values()];
}
