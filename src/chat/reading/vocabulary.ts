import type { Book } from '../../nutrition/book.ts';
import type { Meaning } from './atoms.ts';
import { type Corrector, createCorrector } from './spelling.ts';
import { stems, words } from './stem.ts';
import { compileWords } from './vocabulary/compile-words.ts';

export interface Phrase {
  readonly stems: readonly string[];
  readonly meaning: Meaning;
}

/** All names and words that messages to one kitchen are read with. */
export interface Vocabulary {
  /** Phrases by their first word's one form, longest first. */
  readonly phrases: ReadonlyMap<string, readonly Phrase[]>;
  readonly known: ReadonlySet<string>;
  readonly correct: Corrector;
  /** Location ids by "fridge 2", lower case. */
  readonly locations: ReadonlyMap<string, string>;
  /** One recipe whose names hold all these words, if there is just one. */
  resolveRecipe(text: string): string | undefined;
}

/** What a vocabulary is made from, plain data: the build packs it beside the book. */
export interface WordTable {
  readonly phrases: readonly (readonly [first: string, row: readonly Phrase[]])[];
  /** Words that are no misspelling. */
  readonly known: readonly string[];
  /** Words that a misspelled one is put right toward. */
  readonly targets: readonly string[];
}

const compiled = new WeakMap<Book, Vocabulary>();

/** The vocabulary of a kitchen's book, compiled once for each book. */
export const vocabularyOf = (book: Book): Vocabulary =>
  compiled.get(book) ?? useWords(book, compileWords(book));

/** Reads messages to this book's kitchen with words that were compiled from the same book before. */
export function useWords(book: Book, table: WordTable): Vocabulary {
  const known = new Set(table.known);
  const vocabulary = {
    phrases: new Map(table.phrases),
    known,
    correct: createCorrector(known, table.targets),
    locations: locationsOf(book),
    resolveRecipe: recipeResolver(book),
  };
  compiled.set(book, vocabulary);
  return vocabulary;
}

const locationsOf = (book: Book): ReadonlyMap<string, string> =>
  new Map(
    book.settings.locations.flatMap(({ id, name }): [string, string][] => [
      [words(name).join(' '), id],
      [words(id).join(' '), id],
    ]),
  );

function recipeResolver(book: Book): (text: string) => string | undefined {
  const names = [...book.recipes.values()].map((recipe) => ({
    id: recipe.id,
    stems: new Set(stems([recipe.title, ...recipe.aliases, recipe.id].join(' '))),
  }));
  const remembered = new Map<string, string | undefined>();
  return (text) => {
    if (remembered.has(text)) return remembered.get(text);
    const asked = stems(text);
    const fitting = names.filter((name) => asked.every((word) => name.stems.has(word)));
    const id = asked.length > 1 && fitting.length === 1 ? fitting[0]?.id : undefined;
    if (remembered.size > 2_000) remembered.clear();
    remembered.set(text, id);
    return id;
  };
}
