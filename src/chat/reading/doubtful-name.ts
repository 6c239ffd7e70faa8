import type { Book } from '../../nutrition/book.ts';
import type { Atom } from './atoms.ts';
import { lex } from './lexed.ts';
import { isOneSlip } from './one-slip.ts';
import { isSureName } from './sure-name.ts';
import { COMMON_WORDS } from './vocabulary/common-words.ts';
import { ASKED_ALLERGENS, ASKING_WORDS, ENDS_A_NAME, NAMING_WORDS } from './vocabulary/name-words.ts';

/**
 * The name in a message that is not exactly one of this kitchen's: "oat crunch" where there are oats, "tropical
 * smoothie" where there is a berry one. What is known of a part, or of something like it, must not be told of it.
 * @example doubtfulName('is the tropical smoothie nut free', book, nowMs) // 'tropical smoothie'
 */
export function doubtfulName(text: string, book: Book, nowMs: number): string | undefined {
  const runs = runsOf(lex(text, book, nowMs).atoms);
  const isNamed = runs.some((run) => run.some(isThing));
  const doubtful = runs.find((run) => (isNamed ? isDoubtful(run, book) : run.some(isStrange)));
  return doubtful
    ?.filter(({ sym }) => sym !== 'A')
    .map(({ text }) => text)
    .join(' ');
}

/** Atoms that stand together and may be one name. */
type Run = readonly Atom[];

function runsOf(atoms: readonly Atom[]): Run[] {
  const runs: Atom[][] = [];
  let open: Atom[] = [];
  atoms.forEach((atom, i) => {
    if (isPart(atom) || joins(atoms, i)) open.push(atom);
    else {
      if (open.length > 0) runs.push(open);
      open = [];
    }
  });
  return open.length > 0 ? [...runs, open] : runs;
}

/**
 * "Kiss of oats", "cookies & oats", "oat bars with zorblat", "amazing cooking bars": one name, when a strange word is on
 * one side and what stands between ends no name.
 */
function joins(atoms: readonly Atom[], i: number): boolean {
  const [before, atom, after] = [atoms[i - 1], atoms[i], atoms[i + 1]];
  if (!before || !atom || !after) return false;
  const strange = [before, after].filter(isStrange);
  if (strange.length === 0 || ![before, after].every((side) => isStrange(side) || isThing(side)))
    return false;
  return (
    /^(?:of|n|&|-|\/|with)$/.test(atom.sym) || (/^[a-z]{3,}$/.test(atom.sym) && !ENDS_A_NAME.has(atom.sym))
  );
}

const isThing = ({ sym }: Atom): boolean => sym === 'R' || sym === 'F' || sym === 'P';

const isPart = (atom: Atom): boolean => isThing(atom) || /^[AMVYSU]$/.test(atom.sym) || isStrange(atom);

function isDoubtful(run: Run, book: Book): boolean {
  const things = run.filter(isThing);
  const names = things.filter((atom) => atom.sym !== 'P' || atom.id !== undefined);
  const strange = run.some(isStrange);
  const [first, second] = run;
  if (!run.some(isThing)) return false;
  if (strange || names.length > 1 || run.at(-1)?.sym === 'U' || run.some(isPieceOfFood)) return true;
  if (first?.sym === 'V' && second && isThing(second) && !ASKED_ALLERGENS.has(first.text.split(' ')[0] ?? ''))
    return true;
  return things.some((atom) => atom.sym !== 'P' && !isSureName(atom, book));
}

/** "Almond balls": a food before a piece is no name of that food; "oats, two servings" is still about oats. */
const isPieceOfFood = ({ sym, id, text }: Atom, i: number, run: Run): boolean =>
  sym === 'P' && id === undefined && run[i - 1]?.sym === 'F' && !ASKING_WORDS.has(text);

/** A plain word that is neither an everyday one nor one of those people ask with; or one that makes another dish. */
function isStrange({ sym, text, word }: Atom): boolean {
  if (NAMING_WORDS.has(text) && !/^[RFPVA]$/.test(sym)) return true;
  if (!/^[\p{L}\p{M}]{2,}$/u.test(sym)) return false;
  if (isPlain(text)) return false;
  return !(text.length > 3 && isPlain(word) && isOneSlip(text, word));
}

const isPlain = (word: string): boolean =>
  (COMMON_WORDS.has(word) && !NAMING_WORDS.has(word)) || ASKING_WORDS.has(word);
