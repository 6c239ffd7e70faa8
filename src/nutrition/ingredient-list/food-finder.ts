import type { Food } from '../food.ts';
import { PREP_WORDS } from './words.ts';

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

/** Words that say which make or grade was used. A food that is told apart by one is found before it is dropped. */
const GRADE_WORDS: ReadonlySet<string> = new Set([
  'all',
  'creamy',
  'crunchy',
  'dark',
  'extra',
  'free',
  'golden',
  'granulated',
  'kosher',
  'natural',
  'old-fashioned',
  'organic',
  'purpose',
  'pure',
  'quick',
  'real',
  'regular',
  'smooth',
  'virgin',
  'your',
  'favorite',
  'whole',
]);

/**
 * Finds the food of a line: all the words, then with the preparation in front ("oats, rolled"), then with words of
 * preparation and grade dropped from the ends. Words that name a different food are never dropped.
 */
export function findFood(finder: FoodFinder, foodWords: string, prep?: string): FoundFood | undefined {
  const whole = finder.find(foodWords);
  if (whole) return { food: whole };
  if (prep) {
    const turned = finder.find(`${prep} ${foodWords}`) ?? finder.find(`${foodWords} ${prep}`);
    if (turned) return { food: turned };
  }
  let words = foodWords.split(' ');
  while (words.length > 1) {
    const shorter = withoutOneDescriptor(words);
    if (!shorter) return undefined;
    const food = finder.find(shorter.join(' '));
    if (food) return { food, readAs: shorter.join(' ') };
    words = shorter;
  }
  return undefined;
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
