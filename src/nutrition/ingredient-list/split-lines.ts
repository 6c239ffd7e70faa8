import { ingredientLines } from './headings.ts';
import { type IsFood, readLine } from './read-line.ts';
import { readYield } from './read-yield.ts';
import { LEFT_TO_THE_COOK, PREP_WORDS } from './words.ts';

/** What a list of ingredients came apart into, and the yield when the list names it ("makes 24"). */
export interface SplitList {
  readonly lines: readonly string[];
  readonly pieces?: number;
  /** The first line of a pasted recipe, when it holds no amount: its name, not a food that is eaten. */
  readonly title?: string;
}

/** What a separator leaves hanging at either end of a line. */
const LOOSE_ENDS = /^(?:[\s,+&]|(?:and|plus|with)\s)+|(?:[\s,+&.]|\s(?:and|plus|with))+$/gi;

/** From this many lines with a number on, each is taken for one ingredient. */
const ONE_A_LINE = 3;
const HOLDS_A_NUMBER = /[\d½⅓⅔¼¾⅛⅜⅝⅞]/;

const AMOUNT_START = /^(?:~|about\s+)?(?:\d|\.\d|[½⅓⅔¼¾⅕-⅞])/;
/** "bananas, 150-count": how many of that size a case holds. */
const SIZE_BY_COUNT = /^\d+[\s-]*(?:count|ct)\b/i;
const AMOUNT_WORD =
  /^(?:an?|one|two|three|four|five|six|seven|eight|nine|ten|twelve|dozen|half|quarter|pinch|dash)\s/i;

/**
 * Splits a typed or pasted list into lines. New lines and semicolons always separate; "and", "&", "+", "with" and
 * commas do when what follows is another ingredient: it starts with an amount or is the name of a food.
 * Example: "2 cups oats, toasted, 1 cup peanut butter and banana" is three lines.
 */
export function splitLines(text: string, isFood: IsFood): SplitList {
  const { list, pieces } = readYield(text);
  const written = ingredientLines(list.split(/[\r\n;]+/).filter((line) => line.trim() !== ''));
  const isOneALine = written.filter((line) => HOLDS_A_NUMBER.test(line)).length >= ONE_A_LINE;
  const isTitled = isOneALine && /[\r\n]/.test(list.trim()) && !HOLDS_A_NUMBER.test(written[0] ?? '');
  const title = isTitled ? written.shift()?.trim() : undefined;
  const lines = written
    .flatMap((part) => splitPart(part.trim(), isFood, isOneALine))
    .map((line) => line.replace(LOOSE_ENDS, ''))
    .filter((line) => /[\p{L}\d]/u.test(line));
  return { lines, ...(pieces !== undefined && { pieces }), ...(title && { title }) };
}

function splitPart(part: string, isFood: IsFood, isOneALine: boolean): string[] {
  if (part === '' || isFood(part)) return [part];
  const lines: string[] = [];
  let start = 0;
  for (const { at, length, sign } of separators(part)) {
    const left = part.slice(start, at).trim();
    const right = part.slice(at + length).trim();
    if (left === '' || !startsAnIngredient(right, isFood, sign)) continue;
    if (isOneALine && !holdsOneOfItsOwn(left, right, isFood)) continue;
    if (isAmountOnly(left, isFood) || isOneFood(`${left} ${sign} ${nextPart(right)}`, isFood)) continue;
    if (isAmountBehind(left, right, isFood) || tellsWhichOne(left, right, isFood)) continue;
    lines.push(left);
    start = at + length;
  }
  return [...lines, part.slice(start).trim()];
}

/** In a list with an ingredient a line, what stands behind a comma is one only with an amount of its own. */
const holdsOneOfItsOwn = (left: string, right: string, isFood: IsFood): boolean =>
  readLine(left, isFood).measures.length > 0 &&
  AMOUNT_START.test(right) &&
  readLine(right, isFood).foodWords !== '';

/** "brown sugar, packed ¾ cup 2 Tbsp" and "yogurt 1 qt + 1 cup": the amount of the left food stands on the right. */
const isAmountBehind = (left: string, right: string, isFood: IsFood): boolean => {
  const whole = readLine(`${left}, ${nextPart(right)}`, isFood);
  return (
    readLine(left, isFood).measures.length === 0 &&
    whole.measures.length > 0 &&
    !AMOUNT_START.test(right) &&
    !isFood(readLine(nextPart(right), isFood).foodWords)
  );
};

/** "1/4 cup" before "plus 2 tbsp honey": one ingredient measured twice. */
const isAmountOnly = (left: string, isFood: IsFood): boolean => readLine(left, isFood).foodWords === '';

/** "1 cup half and half", "mac and cheese". */
const isOneFood = (words: string, isFood: IsFood): boolean =>
  !words.includes(',') && isFood(readLine(words, isFood).foodWords);

/** "1 cup milk, low-fat": the words behind the comma are no food and make one with the food before it. */
const tellsWhichOne = (left: string, right: string, isFood: IsFood): boolean => {
  const words = nextPart(right)
    .replace(/\([^()]*\)/g, ' ')
    .trim();
  const food = readLine(left, isFood).foodWords;
  return food !== '' && words !== '' && !isFood(words) && isFood(`${words} ${food}`);
};

interface Separator {
  readonly at: number;
  readonly length: number;
  readonly sign: string;
}

/** Places where a line may end, outside parentheses; a comma inside a number ("1,000") is none. */
function separators(part: string): Separator[] {
  const found: Separator[] = [];
  for (const match of part.matchAll(/\s*(,(?!\d{3}\b)|\+|&|\s(?:and|with|plus|w\/)(?=\s))\s*/gi)) {
    if (depthAt(part, match.index) > 0) continue;
    found.push({ at: match.index, length: match[0].length, sign: (match[1] ?? '').trim() });
  }
  return found;
}

const depthAt = (text: string, at: number): number => {
  const before = text.slice(0, at);
  return (before.match(/\(/g)?.length ?? 0) - (before.match(/\)/g)?.length ?? 0);
};

/** The words up to the next separator. */
const nextPart = (text: string): string =>
  text.split(/,(?!\d{3}\b)|\+|&|\s(?:and|with|plus)\s/i)[0]?.trim() ?? '';

function startsAnIngredient(right: string, isFood: IsFood, sign: string): boolean {
  const next = nextPart(right.replace(/^(?:and|plus|&|\+)\s+/i, ''));
  if (next === '' || SIZE_BY_COUNT.test(next)) return false;
  if (AMOUNT_START.test(next)) return readLine(next, isFood).foodWords !== '';
  if (isFood(next) || isFood(next.replace(LEFT_TO_THE_COOK, '').trim())) return true;
  const read = readLine(next, isFood);
  if (read.measures.length > 0 && isFood(read.foodWords)) return true;
  if (PREP_WORDS.has(next.split(' ')[0]?.toLowerCase() ?? '')) return false;
  return sign === '+' || AMOUNT_WORD.test(next) || isFood(withoutFirstWord(next));
}

/** "ripe banana" is a banana. */
const withoutFirstWord = (words: string): string =>
  words
    .replace(/\([^()]*\)/g, ' ')
    .trim()
    .split(' ')
    .slice(1)
    .join(' ');
