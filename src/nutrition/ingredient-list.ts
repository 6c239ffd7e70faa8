import type { FoodFinder } from './ingredient-list/food-finder.ts';
import { readLine } from './ingredient-list/read-line.ts';
import {
  type CountedLine,
  isCounted,
  resolveLine,
  type UncountedLine,
} from './ingredient-list/resolve-line.ts';
import { splitLines } from './ingredient-list/split-lines.ts';
import { Problem } from './problem.ts';

export type { FoodFinder } from './ingredient-list/food-finder.ts';
export type { CountedLine, UncountedLine } from './ingredient-list/resolve-line.ts';

/** A typed or pasted list of ingredients, in grams of foods. */
export interface IngredientList {
  readonly counted: readonly CountedLine[];
  /** Lines that could not be counted, each with its reason. */
  readonly uncounted: readonly UncountedLine[];
  /** "makes 24". */
  readonly pieces?: number;
}

const LONGEST_TEXT = 6_000;
const MOST_LINES = 100;

/**
 * Reads a list such as "2 cups rolled oats, 1 cup peanut butter, 1/2 cup honey makes 24".
 * Every line comes back, counted or with its reason. Throws `too_long` past 6,000 characters or 100 lines.
 * Example: "2 tbsp sunflower butter + banana" is 32 g and 118 g by USDA portions.
 */
export function parseIngredientList(text: string, finder: FoodFinder): IngredientList {
  checkLength(text.length, LONGEST_TEXT);
  const known = new Map<string, boolean>();
  const isFood = (words: string): boolean => {
    const ready = known.get(words);
    if (ready !== undefined) return ready;
    const is = words.trim() !== '' && finder.find(words.trim()) !== undefined;
    known.set(words, is);
    return is;
  };
  const { lines, pieces, title } = splitLines(text, isFood);
  checkLength(lines.length, MOST_LINES);
  const resolved = lines.map((line) => resolveOne(line, finder, isFood));
  return {
    counted: resolved.filter(isCounted),
    uncounted: [
      ...(title === undefined ? [] : [titleLine(title)]),
      ...resolved.filter((line): line is UncountedLine => !isCounted(line)),
    ],
    ...(pieces !== undefined && { pieces }),
  };
}

/** The name above a pasted recipe may sound like a food ("Banana muffins"); it is said, not counted. */
const titleLine = (title: string): UncountedLine => ({
  written: title,
  reason: 'no_amount',
  message: `"${title}" was taken for the title.`,
  hint: 'Write an amount, like "1 banana", to count it.',
  nearest: [],
});

function resolveOne(
  line: string,
  finder: FoodFinder,
  isFood: (words: string) => boolean,
): CountedLine | UncountedLine {
  try {
    return resolveLine(readLine(line, isFood), finder);
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return { written: line, reason: 'bad_amount', message: error.message, hint: error.hint, nearest: [] };
  }
}

function checkLength(length: number, most: number): void {
  if (length <= most) return;
  throw new Problem(
    'too_long',
    'This list is too long to read in one message.',
    'Send up to 100 ingredients in one message.',
  );
}
