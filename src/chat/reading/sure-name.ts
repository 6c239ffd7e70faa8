import type { Book } from '../../nutrition/book.ts';
import { nameKey } from '../../nutrition/name-key.ts';
import { findersOf } from '../finders.ts';
import type { Atom } from './atoms.ts';
import { isOneSlip } from './one-slip.ts';
import { vocabularyOf } from './vocabulary.ts';

/**
 * Whether a food or recipe was called by a name of its own: its title, id or alias, in one or many, or with one letter
 * wrong where no other name here is one letter away. Words that only fit it are not its name.
 */
export function isSureName(atom: Atom, book: Book): boolean {
  const typed = atom.text.split(' ');
  const meant = atom.word.split(' ');
  const id = idCalled(meant.join(' '), book) ?? onesId(atom, book);
  if (id === undefined || (atom.id !== undefined && id !== atom.id)) return false;
  return typed.every((word, i) => word === meant[i] || isOnlySlip(typed, i, meant, id, book));
}

/** Whether the words are the name of exactly one recipe or food, and which. */
export function idCalled(words: string, book: Book): string | undefined {
  const { recipes, foods } = findersOf(book);
  const named = recipes.names();
  const key = nameKey(words);
  return named.has(key) ? named.get(key) : (book.recipes.get(words)?.id ?? foods.find(words)?.id);
}

/** "The cherry ones" are the cherry bars where something here is called so. */
function onesId({ id, word }: Atom, book: Book): string | undefined {
  const recipe = book.recipes.get(id ?? '');
  const food = /^(.+) ones?$/.exec(word)?.[1];
  return recipe && food && idCalled(`${food} ${recipe.pieceUnit}`, book) === id ? id : undefined;
}

function isOnlySlip(
  typed: readonly string[],
  at: number,
  meant: readonly string[],
  id: string,
  book: Book,
): boolean {
  const word = typed[at] ?? '';
  if (!isOneSlip(word, meant[at] ?? '')) return false;
  for (const other of vocabularyOf(book).known) {
    if (other === meant[at] || !isOneSlip(word, other)) continue;
    const another = idCalled(meant.with(at, other).join(' '), book);
    if (another !== undefined && another !== id) return false;
  }
  return true;
}
