import { NEEDS, type Need } from '../../nutrition/allergens.ts';
import { stems } from './stem.ts';
import { ALLERGEN_NOUNS, NEED_PHRASES } from './vocabulary/needs.ts';

/** What a list like "peanut, vegan, no kiwi, likes oat bars, 2 pieces" says. */
export interface NeedList {
  /** In the order of the shared list, each once. */
  readonly avoid: readonly Need[];
  /** What is avoided and on no list, in the words it was told in. */
  readonly foods: readonly string[];
  readonly likes: readonly string[];
  readonly pieces?: number;
  /** "No needs" was said. */
  readonly none: boolean;
}

const key = (words: string): string => stems(words).join(' ');

const BY_WORDS: ReadonlyMap<string, readonly Need[]> = new Map(
  [...ALLERGEN_NOUNS, ...NEED_PHRASES].flatMap(([needs, phrases]) =>
    phrases.map((phrase): [string, readonly Need[]] => [key(phrase), needs]),
  ),
);

const BETWEEN = /\s*(?:[,;/&+\n]|\band\b|\bplus\b|\bor\b)\s*/i;
const BEFORE =
  /^(?:i'?m|i am|i|am|im|is|are|has|have|a|an|the|any|also|no|not|non|without|avoids?|avoiding|severe|mild|(?:allergic|allergy|allergies|intolerant|sensitive) to|allergy:?|allergies:?|cannot (?:have|eat)|can'?t (?:have|eat)|don'?t eat|doesn'?t eat)\s+/i;
const AFTER = /\s+(?:free|allergy|allergies|allergic|intolerance|intolerant|sensitivity|please)$/i;
const LIKES = /^(?:i\s+)?(?:likes?|loves?)\s+(?:the\s+)?(.+)$/i;
const PIECES = /^(?:(\d+(?:\.\d+)?)\s+pieces?(?: each)?|pieces?:?\s*(\d+(?:\.\d+)?))$/i;
const NONE = /^(?:none|nothing|no needs?|no allerg(?:y|ies)|-)$/i;

/**
 * Reads what a person, or a cell of a roster, says somebody needs. What is on no list is kept as a food avoided: a
 * word that is not understood is never dropped.
 * @example needList('peanut, vegan') // { avoid: ['peanut', 'animal'], foods: [], likes: [], none: false }
 */
export function needList(text: string): NeedList {
  const needs = new Set<Need>();
  const foods: string[] = [];
  const likes: string[] = [];
  let pieces: number | undefined;
  let none = false;
  for (const part of text.split(BETWEEN)) {
    const said = part.trim().replace(/[.!]+$/, '');
    if (said === '') continue;
    const like = LIKES.exec(said)?.[1];
    const count = PIECES.exec(said);
    if (NONE.test(said)) none = true;
    else if (like !== undefined) likes.push(like);
    else if (count) pieces = Number(count[1] ?? count[2]);
    else {
      const found = needsNamed(said);
      for (const need of found) needs.add(need);
      if (found.length === 0) foods.push(bare(said).toLowerCase());
    }
  }
  return {
    avoid: NEEDS.filter((need) => needs.has(need)),
    foods: [...new Set(foods)],
    likes,
    ...(pieces === undefined ? {} : { pieces }),
    none,
  };
}

/** The needs a few words are about; none when they name no need. */
export function needsNamed(words: string): readonly Need[] {
  let rest = words.trim();
  for (;;) {
    const found = BY_WORDS.get(key(rest)) ?? BY_WORDS.get(key(rest.replace(AFTER, '')));
    if (found) return found;
    const shorter = rest.replace(BEFORE, '');
    if (shorter === rest) return [];
    rest = shorter;
  }
}

function bare(words: string): string {
  let rest = words.trim();
  for (let shorter = rest.replace(BEFORE, ''); shorter !== rest; shorter = rest.replace(BEFORE, ''))
    rest = shorter;
  return rest.replace(AFTER, '');
}
