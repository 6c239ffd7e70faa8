import type { Book } from '../../nutrition/book.ts';
import type { Atom } from './atoms.ts';
import { lex } from './lexed.ts';
import { COMMON_WORDS } from './vocabulary/common-words.ts';

/** Words of allergen questions that stand beside a name without being part of it. */
const ASKING_WORDS: ReadonlySet<string> = new Set(
  `allergen allergens allergy allergies allergic contain contains containing contaminate contaminated cross free severe deadly
  intolerant intolerance trace traces brand supplier formula product allergically plz pls vs versus vegan vegetarian
  nutritionally recipe recipes version versions variant ingredient ingredients cups bags pieces servings serving`.split(
    /\s+/,
  ),
);

/**
 * A name of which this kitchen knows only a part: "tropical smoothie" where there is a berry smoothie, "pumpkin bread"
 * where there is pumpkin. What is known of the part must not be told of the whole.
 * @example strangeName('is the tropical smoothie nut free', book, nowMs) // 'tropical smoothie'
 */
export function strangeName(text: string, book: Book, nowMs: number): string | undefined {
  const { atoms } = lex(text, book, nowMs);
  const at = atoms.findIndex(isName);
  const name = atoms[at];
  if (!name) return undefined;
  const before = atoms[at - 1];
  const after = atoms[at + 1];
  if (before && isStrange(before)) return `${before.text} ${name.text}`;
  if (after && (isStrange(after) || isName(after))) return `${name.text} ${after.text}`;
  return undefined;
}

const isName = ({ sym, id }: Atom): boolean =>
  sym === 'R' || sym === 'F' || (sym === 'P' && id !== undefined);

/** A plain word that is neither an everyday one nor one of those people ask with. */
const isStrange = ({ sym, word }: Atom): boolean =>
  /^\p{L}{3,}$/u.test(sym) && !COMMON_WORDS.has(word) && !ASKING_WORDS.has(word);
