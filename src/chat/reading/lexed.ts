import type { Book } from '../../nutrition/book.ts';
import type { Atom } from './atoms.ts';
import { annotate } from './lex/annotate.ts';
import { lineOf } from './lex/cursor.ts';
import { mergeContainers } from './lex/merge-containers.ts';
import { mergeNames } from './lex/merge-names.ts';
import { mergeNeeds } from './lex/merge-needs.ts';
import { mergeTimes } from './lex/merge-times.ts';
import { splitListedNeeds } from './lex/need-in-name.ts';
import { normalize } from './normalize.ts';
import { tokenize } from './tokens.ts';
import { vocabularyOf } from './vocabulary.ts';

/** A message taken apart. Rules look at `shape` and `said`; slots come from `atoms`. */
export interface Lexed {
  readonly atoms: readonly Atom[];
  /** The atoms that stand in `shape`, one for one: all but the commas. */
  readonly seen: readonly Atom[];
  /** Words and symbols with one space between and around: " make N R for W ". */
  readonly shape: string;
  /** Every word as understood, with one space between and around. */
  readonly said: string;
  /** The same as typed: a right word that the speller takes for another still stands here. */
  readonly typed: string;
  /** What stands in `shape`, for quick questions. */
  readonly syms: ReadonlySet<string>;
  /** Two or more bare numbers were said. */
  readonly countsTwice: boolean;
  /** The message on one line, case kept. */
  readonly text: string;
}

/** Takes a message apart with one kitchen's vocabulary. Never throws. */
export function lex(text: string, book: Book, nowMs: number): Lexed {
  const plain = normalize(text);
  const vocabulary = vocabularyOf(book);
  const line = lineOf(tokenize(plain), vocabulary, nowMs, book.settings.timeZone);
  const atoms = mergeTimes(
    mergeContainers(mergeNames(mergeNeeds(splitListedNeeds(annotate(line))), vocabulary)),
  );
  let said = ' ';
  let typed = ' ';
  for (const token of line.tokens) {
    if (token.kind === 'sign') continue;
    said += `${token.word} `;
    typed += `${token.typed} `;
  }
  return { atoms, said, typed, text: plain, ...shapeOf(atoms) };
}

/** A part of a message, for rules: the words said around it are left out of its shape. */
export const partOf = (whole: Lexed, atoms: readonly Atom[]): Lexed => ({
  ...whole,
  atoms,
  ...shapeOf(atoms),
});

function shapeOf(atoms: readonly Atom[]): Pick<Lexed, 'shape' | 'syms' | 'seen' | 'countsTwice'> {
  let shape = ' ';
  const syms = new Set<string>();
  const seen: Atom[] = [];
  let counts = 0;
  for (const atom of atoms) {
    const { sym } = atom;
    if (sym === ',' || sym === '.' || sym === ';') continue;
    if (sym === 'N') counts++;
    shape += `${sym} `;
    syms.add(sym);
    seen.push(atom);
  }
  return { shape, syms, seen, countsTwice: counts > 1 };
}
