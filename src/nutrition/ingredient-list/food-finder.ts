import type { Food } from '../food.ts';
import { GENERIC_WORDS, GRADE_WORDS, PREP_WORDS } from './words.ts';

/** How a list finds foods: by name or alias, and what comes near when there is none. */
export interface FoodFinder {
  /** The food with this name or alias as people type it; nothing less than sure. */
  find(words: string): Food | undefined;
  /** The nearest foods, best first. */
  nearest(words: string, most: number): readonly Food[];
}

/** A food found, and whether words were passed over to find it. */
export interface FoundFood {
  readonly food: Food;
  /** The words the food was found by, when not all of those written. */
  readonly readAs?: string;
}

/** More words behind the commas than this tell how to prepare a food, not which one it is. */
const MOST_QUALIFIERS = 4;
const LONGEST_QUALIFIER = 40;

/**
 * Finds the food of a line. Words behind the commas and in parentheses may tell which one it is ("flour,
 * whole-wheat"; "milk (1%)"), so the name with most of them that is a food comes first; then words of preparation
 * and grade are dropped from the ends. Words that name a different food are never dropped.
 */
export function findFood(finder: FoodFinder, foodWords: string, prep = ''): FoundFood | undefined {
  const aside = [...foodWords.matchAll(/\(([^()]*)\)/g)].map((match) => match[1] ?? '');
  const [head = '', ...inName] = foodWords.replace(/\s*\([^()]*\)/g, '').split(',');
  const qualifiers = qualifiersOf([...inName, ...prep.split(','), ...aside]);
  const [first, ...others] = namesIn(head.trim());
  const found = first === undefined ? undefined : findOne(finder, first, qualifiers);
  if (found) return found;
  for (const name of others) {
    const other = findOne(finder, name, qualifiers);
    if (other) return { food: other.food, readAs: other.readAs ?? name };
  }
  return undefined;
}

/** "frozen or liquid eggs": as written, then "frozen eggs", "frozen", "liquid eggs". */
function namesIn(head: string): string[] {
  const [left = '', right] = head.split(/\s+or\s+/i);
  if (right === undefined) return [head];
  const tail = right.split(' ');
  const shared = [2, 1].flatMap((count) =>
    tail.length > count ? [`${left} ${tail.slice(-count).join(' ')}`] : [],
  );
  return [head, ...shared, left, right];
}

function qualifiersOf(parts: readonly string[]): string[] {
  return parts
    .map((part) => part.trim().split(/\s+or\s+/i)[0] ?? '')
    .filter((part) => part !== '' && part.length <= LONGEST_QUALIFIER && !NO_QUALIFIER.test(part))
    .slice(0, MOST_QUALIFIERS);
}

/** Asides that say nothing about which food it is. */
const NO_QUALIFIER = /^(?:or|plus|optional|about|such as|like|divided|to taste|see|for)\b/i;

function findOne(finder: FoodFinder, name: string, qualifiers: readonly string[]): FoundFood | undefined {
  const exact = withMost(finder, name, qualifiers);
  if (exact) return { food: exact };
  let words = name.split(' ');
  while (words.length > 1) {
    const shorter = withoutOneDescriptor(words);
    if (!shorter) break;
    const food = withMost(finder, shorter.join(' '), qualifiers);
    if (food && !isOtherState(name, food)) return { food, readAs: shorter.join(' ') };
    words = shorter;
  }
  // "Cereal, oats, rolled": the food is named behind its class.
  return GENERIC_WORDS.has(name.toLowerCase()) && qualifiers.length > 0
    ? findOne(finder, qualifiers[0] ?? '', qualifiers.slice(1))
    : undefined;
}

/** A state that was written, and the states of a food it must not be read as: raw chicken is not roast chicken. */
const OTHER_STATES: readonly (readonly [written: RegExp, other: RegExp])[] = [
  [/\b(?:raw|uncooked)\b/i, /\b(?:cooked|roasted|baked|boiled|broiled|hard-boiled)\b/i],
  [/\bfresh\b/i, /\b(?:dried|canned)\b/i],
  [/\b(?:cooked|boiled|roasted|baked)\b/i, /\b(?:raw|dry)\b/i],
  [/\bground\b/i, /\bsliced\b/i],
];

const isOtherState = (written: string, food: Food): boolean =>
  OTHER_STATES.some(([said, other]) => said.test(written) && other.test(food.name));

/** The food of the name with as many of its qualifiers as make one. */
function withMost(finder: FoodFinder, name: string, qualifiers: readonly string[]): Food | undefined {
  for (const some of subsets(qualifiers)) {
    const said = some.join(' ');
    const food = finder.find(`${said} ${name}`.trim()) ?? (said && finder.find(`${name} ${said}`));
    if (food) return food;
  }
  return undefined;
}

/** All choices of the qualifiers, the largest first, the empty one last. */
function subsets(all: readonly string[]): string[][] {
  const choices = Array.from({ length: 2 ** all.length }, (_, bits) =>
    all.filter((_qualifier, place) => (bits >> place) % 2 === 1),
  );
  return choices.sort((a, b) => b.length - a.length);
}

const isDescriptor = (word: string | undefined): boolean => {
  const plain = (word ?? '').toLowerCase();
  return PREP_WORDS.has(plain) || GRADE_WORDS.has(plain);
};

function withoutOneDescriptor(words: readonly string[]): string[] | undefined {
  if (isDescriptor(words[0])) return words.slice(1);
  if (isDescriptor(words.at(-1))) return words.slice(0, -1);
  return undefined;
}
