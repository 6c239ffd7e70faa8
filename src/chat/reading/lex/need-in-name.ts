import type { Atom } from '../atoms.ts';
import { stem } from '../stem.ts';
import { NEED_PHRASES } from '../vocabulary/needs.ts';

const JOINS_NEEDS = new Set(['and', 'or', ',', '/', '&', '+']);

/** The need a name starts with, and how many of its words say so. "gluten free oat bars" starts with two. */
function needAtStart(words: readonly string[]): { needs: Atom['needs']; count: number } | undefined {
  const forms = words.map(stem);
  for (const [needs, phrases] of NEED_PHRASES) {
    for (const phrase of phrases) {
      const said = phrase.split(' ').map(stem);
      if (said.length < words.length && said.every((form, i) => form === forms[i]))
        return { needs, count: said.length };
    }
  }
  return undefined;
}

/**
 * A need and the name behind it, where a name of a food took both in: "gluten free oats" are a food here, and
 * "gluten free oat bars" the oat bars without gluten.
 */
export function splitNeed(dish: Atom): readonly [need: Atom, name: string] | undefined {
  const words = dish.word.split(' ');
  const start = needAtStart(words);
  if (!start) return undefined;
  const need = words.slice(0, start.count).join(' ');
  return [{ sym: 'A', text: need, word: need, needs: start.needs }, words.slice(start.count).join(' ')];
}

/**
 * "Vegan and gluten-free bars" asks for two needs, whatever recipe is called "gluten-free bars": a name right behind
 * another need is taken apart where what is left of it is only a piece.
 */
export function splitListedNeeds(atoms: readonly Atom[]): readonly Atom[] {
  if (!atoms.some(({ sym }) => sym === 'A')) return atoms;
  return atoms.flatMap((atom, i) => {
    const isListed = JOINS_NEEDS.has(atoms[i - 1]?.sym ?? '') && atoms[i - 2]?.sym === 'A';
    if (atom.sym !== 'R' || atom.needs === undefined || !isListed) return [atom];
    const split = splitNeed(atom);
    if (!split || split[1].includes(' ')) return [atom];
    const [need, piece] = split;
    return [need, { sym: 'P', text: piece, word: piece, unit: atom.unit ?? stem(piece) }];
  });
}
