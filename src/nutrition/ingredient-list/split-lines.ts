import { type IsFood, readLine } from './read-line.ts';
import { LEFT_TO_THE_COOK, PREP_WORDS } from './words.ts';

/** What a list of ingredients came apart into, and the yield when the list names it ("makes 24"). */
export interface SplitList {
  readonly lines: readonly string[];
  readonly pieces?: number;
}

const YIELD =
  /(?:^|[\s,;.(])(?:and\s+)?(?:makes?|yields?|yield:?|cut in(?:to)?|serves|divided into)\s*:?\s*(?:about\s+)?(\d{1,6})(?!\s*(?:cups?|tbsp|tsp|g|oz|lb|x)\b)(?:\s+(?:bars?|bites?|pieces?|balls?|servings?|squares?|muffins?|cups?|people|portions?|rolls?|cookies))?[).]?(?=$|[\s,;.])/i;

/** What a separator leaves hanging at either end of a line. */
const LOOSE_ENDS = /^(?:[\s,+&]|(?:and|plus|with)\s)+|(?:[\s,+&.]|\s(?:and|plus|with))+$/gi;

const AMOUNT_START = /^(?:~|about\s+)?(?:\d|\.\d|[½⅓⅔¼¾⅕-⅞])/;
const AMOUNT_WORD =
  /^(?:an?|one|two|three|four|five|six|seven|eight|nine|ten|twelve|dozen|half|quarter|pinch|dash)\s/i;

/**
 * Splits a typed or pasted list into lines. New lines and semicolons always separate; "and", "&", "+", "with" and
 * commas do when what follows is another ingredient: it starts with an amount or is the name of a food.
 * Example: "2 cups oats, toasted, 1 cup peanut butter and banana" is three lines.
 */
export function splitLines(text: string, isFood: IsFood): SplitList {
  const yieldMatch = YIELD.exec(text);
  const list = yieldMatch ? text.replace(yieldMatch[0], ' ; ') : text;
  const lines = list
    .split(/[\r\n;]+/)
    .flatMap((part) => splitPart(part.trim(), isFood))
    .map((line) => line.replace(LOOSE_ENDS, ''))
    .filter((line) => /[\p{L}\d]/u.test(line));
  const pieces = yieldMatch ? Number(yieldMatch[1]) : 0;
  return { lines, ...(pieces > 0 && { pieces }) };
}

function splitPart(part: string, isFood: IsFood): string[] {
  if (part === '' || isFood(part)) return [part];
  const lines: string[] = [];
  let start = 0;
  for (const { at, length, sign } of separators(part)) {
    const left = part.slice(start, at).trim();
    const right = part.slice(at + length).trim();
    if (left === '' || !startsAnIngredient(right, isFood, sign)) continue;
    if (isAmountOnly(left, isFood) || isOneFood(`${left} ${sign} ${nextPart(right)}`, isFood)) continue;
    lines.push(left);
    start = at + length;
  }
  return [...lines, part.slice(start).trim()];
}

/** "1/4 cup" before "plus 2 tbsp honey": one ingredient measured twice. */
const isAmountOnly = (left: string, isFood: IsFood): boolean => readLine(left, isFood).foodWords === '';

/** "1 cup half and half", "mac and cheese". */
const isOneFood = (words: string, isFood: IsFood): boolean =>
  !words.includes(',') && isFood(readLine(words, isFood).foodWords);

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
  if (next === '') return false;
  if (AMOUNT_START.test(next)) return readLine(next, isFood).foodWords !== '';
  if (isFood(next) || isFood(next.replace(LEFT_TO_THE_COOK, '').trim())) return true;
  if (PREP_WORDS.has(next.split(' ')[0]?.toLowerCase() ?? '')) return false;
  return sign === '+' || AMOUNT_WORD.test(next) || isFood(withoutFirstWord(next));
}

/** "ripe banana" is a banana. */
const withoutFirstWord = (words: string): string => words.split(' ').slice(1).join(' ');
