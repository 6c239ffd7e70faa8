import { expect, test } from 'vitest';
import { loadBook } from '../../src/book/load-book.ts';
import { read } from '../../src/chat/reading/read.ts';
import { compileWords } from '../../src/chat/reading/vocabulary/compile-words.ts';
import { useWords } from '../../src/chat/reading/vocabulary.ts';
import { loadPhrases } from '../helpers/phrases.ts';

const book = loadBook([new URL('../../recipes', import.meta.url).pathname]);
const nowMs = Date.parse('2026-11-25T10:00:00-06:00');

test('words that were packed as JSON read every phrase as the words compiled from the book do', () => {
  const packed = { ...book };
  useWords(packed, JSON.parse(JSON.stringify(compileWords(book))));
  const readings = (from: typeof book) =>
    loadPhrases().map(({ text }) => ({ text, ...read(text, { book: from, conversation: {}, nowMs }) }));
  expect(readings(packed)).toEqual(readings(book));
});

test('a book answers with the words it was given, not with words of its own', () => {
  const strange = { ...book };
  const meaning = { sym: 'R', id: 'oat-bars' } as const;
  useWords(strange, { phrases: [['zorp', [{ stems: ['zorp'], meaning }]]], known: ['zorp'], targets: [] });
  const { slots } = read('40 zorp', { book: strange, conversation: {}, nowMs });
  expect(slots).toMatchObject({ quantity: 40, recipe: 'oat-bars' });
});
