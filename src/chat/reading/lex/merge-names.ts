import type { Atom } from '../atoms.ts';
import { stem, stems } from '../stem.ts';
import { DISH_NOUNS } from '../vocabulary/things.ts';
import type { Vocabulary } from '../vocabulary.ts';
import { splitNeed } from './need-in-name.ts';

const NO_DISH = new Set(['person', 'serving', 'piece', 'snack']);
const MOST_WORDS = 3;

/** Everyday words that name a dish when they stand before its piece: "40 purple bars". */
const NAMING: ReadonlySet<string> = new Set(
  'purple blue green red yellow pink white black rainbow tropical power monster magic classic original spicy breakfast holiday winter summer birthday recovery victory halftime champion'.split(
    ' ',
  ),
);

/** "oat bars", "moon bars", "banana walnut muffins": a food or a strange word before a piece names a recipe. */
export function mergeNames(atoms: readonly Atom[], vocabulary: Vocabulary): readonly Atom[] {
  const merged: Atom[] = [];
  for (let i = 0; i < atoms.length; i++) {
    const atom = atoms[i] as Atom;
    const turned = turnedName(atoms, i, vocabulary);
    if (turned) {
      merged.push(turned);
      i += 2;
    } else if (atom.sym === 'P' && !NO_DISH.has(atom.unit ?? ''))
      merged.push(...withNeedApart(named(merged, atom, vocabulary), vocabulary));
    else if (isDishNoun(atom)) merged.push(dishNamed(merged, atom, vocabulary));
    else if (isOnes(atom) && merged.at(-1)?.sym === 'F') merged.push(...onesNamed(merged, atom, vocabulary));
    else if (atom.sym === 'R' && atom.id === undefined)
      merged.push({ ...atom, id: vocabulary.resolveRecipe(atom.word) });
    else merged.push(atom);
  }
  return merged;
}

/** "gf oat bars" are the oat bars with a need, unless this kitchen has a dish of just that name. */
function withNeedApart(dish: Atom, vocabulary: Vocabulary): Atom[] {
  const split = dish.sym === 'R' && dish.id === undefined ? splitNeed(dish) : undefined;
  const id = split && recipeCalled(split[1], vocabulary);
  if (!split || id === undefined) return [dish];
  return [split[0], { ...dish, text: split[1], word: split[1], id }];
}

/** The recipe of just that name, else the only one whose names hold all the words. */
function recipeCalled(name: string, { phrases, resolveRecipe }: Vocabulary): string | undefined {
  const forms = stems(name);
  const called = phrases
    .get(forms[0] ?? '')
    ?.find((phrase) => phrase.meaning.sym === 'R' && phrase.stems.join(' ') === forms.join(' '));
  return called?.meaning.id ?? resolveRecipe(name);
}

/** "bars of cherry", "bites of cocoa": a dish of the kitchen said the other way round. */
function turnedName(atoms: readonly Atom[], i: number, vocabulary: Vocabulary): Atom | undefined {
  const [piece, of, food] = atoms.slice(i, i + 3);
  if (piece?.sym !== 'P' || of?.sym !== 'of' || food?.sym !== 'F') return undefined;
  const id = vocabulary.resolveRecipe(`${food.word} ${piece.word}`);
  if (id === undefined) return undefined;
  return {
    sym: 'R',
    text: `${piece.text} of ${food.text}`,
    word: `${food.word} ${piece.word}`,
    unit: piece.unit,
    id,
  };
}

const isDishNoun = ({ sym, word }: Atom): boolean =>
  DISH_NOUNS.has(stem(word)) && (sym === word || sym === 'F');

/** "banana bread", "kale chips": foods before the last word of a dish's name. Alone, toast is only a food. */
function dishNamed(before: Atom[], noun: Atom, vocabulary: Vocabulary): Atom {
  const piece: Atom = { sym: 'P', text: noun.text, word: noun.word };
  const dish = named(before, piece, vocabulary);
  if (dish !== piece) return { ...dish, id: vocabulary.resolveRecipe(dish.word) };
  return noun.sym === 'F' || /^(?:bowl|chip|crisp|cluster|tart|dip|slider|cake|pie)s?$/.test(noun.word)
    ? noun
    : { ...noun, sym: 'R', id: vocabulary.resolveRecipe(noun.word) };
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
