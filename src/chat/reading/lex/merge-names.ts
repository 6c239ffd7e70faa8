import type { Atom } from '../atoms.ts';
import type { Vocabulary } from '../vocabulary.ts';

const NO_DISH = new Set(['person', 'serving', 'piece', 'snack']);
const MOST_WORDS = 3;

/** Everyday words that name a dish when they stand before its piece: "40 purple bars". */
const NAMING: ReadonlySet<string> = new Set(
  'purple blue green red yellow pink white black rainbow tropical power monster magic classic original spicy breakfast holiday winter summer birthday recovery victory halftime champion'.split(
    ' ',
  ),
);

/** "oat bars", "moon bars", "banana walnut muffins": a food or a strange word before a piece names a recipe. */
export function mergeNames(atoms: Atom[], vocabulary: Vocabulary): Atom[] {
  const merged: Atom[] = [];
  for (const atom of atoms) {
    if (atom.sym === 'P' && !NO_DISH.has(atom.unit ?? '')) merged.push(named(merged, atom, vocabulary));
    else if (isOnes(atom) && merged.at(-1)?.sym === 'F') merged.push(...onesNamed(merged, atom, vocabulary));
    else if (atom.sym === 'R' && atom.id === undefined)
      merged.push({ ...atom, id: vocabulary.resolveRecipe(atom.word) });
    else merged.push(atom);
  }
  return merged;
}

const isOnes = ({ sym }: Atom): boolean => sym === 'ones' || sym === 'one';

const PIECES_OF_ONES = ['bar', 'bite', 'muffin', 'roll', 'square', 'parfait', 'smoothie', 'oats', 'mix'];

/** "the cherry ones": the one dish whose name starts so. */
function onesNamed(before: Atom[], ones: Atom, vocabulary: Vocabulary): Atom[] {
  const food = before.at(-1);
  if (!food) return [ones];
  const ids = new Set(
    PIECES_OF_ONES.map((piece) => vocabulary.resolveRecipe(`${food.word} ${piece}`)).filter(
      (id) => id !== undefined,
    ),
  );
  const [id] = ids;
  if (ids.size !== 1 || id === undefined) return [ones];
  before.pop();
  return [{ sym: 'R', text: `${food.text} ${ones.text}`, word: `${food.word} ${ones.word}`, id }];
}

function named(before: Atom[], piece: Atom, vocabulary: Vocabulary): Atom {
  let from = before.length;
  while (from > 0 && before.length - from < MOST_WORDS && isName(before, from - 1)) from--;
  if (from === before.length) return piece;
  const parts = before.splice(from);
  const text = [...parts, piece].map((part) => part.text).join(' ');
  const word = [...parts, piece].map((part) => part.word).join(' ');
  return { sym: 'R', text, word, unit: piece.unit, id: vocabulary.resolveRecipe(word) };
}

function isName(atoms: Atom[], i: number): boolean {
  const atom = atoms[i];
  if (!atom) return false;
  if (atom.sym === 'M') return /^(protein|energy)$/.test(atom.word);
  if (atom.sym === 'F') return !/^(without|add|no)$/.test(atoms[i - 1]?.sym ?? '');
  return (
    atom.unknown === true ||
    NAMING.has(atom.sym) ||
    (atom.sym === 'V' && /^(sesame|fish|wheat|soy|nut)$/.test(atom.word)) ||
    (atom.sym === 'R' && atom.unit === undefined)
  );
}
