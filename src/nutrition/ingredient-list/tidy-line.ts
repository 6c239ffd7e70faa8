import { type IsFood, isMeasureOnly, isWeighed, readMeasures, unglued } from './read-measures.ts';

/** What separates the columns of a pasted table. */
const COLUMN = /\t+|\s*\|+\s*/;

/**
 * One ingredient line with its amount first, however it was laid out: "Oats, rolled | 2 cups | 6.5 oz",
 * "honey: 30 g", "apples, peeled, sliced 6 cups", "2- 12.5 oz cans chickpeas" and "1 - egg".
 * Of two columns that tell the amount, the weight counts.
 * @example tidyLine('Canola oil\t1 Tbsp 2 tsp', isFood) // '1 Tbsp 2 tsp Canola oil'
 */
export function tidyLine(written: string, isFood: IsFood): string {
  const plain = written
    .replace(/\(s\)/gi, 's')
    .replace(/[*†‡]+(?=\s|$)/g, '')
    .replace(/^([\d./½⅓⅔¼¾⅛⅜⅝⅞]+)\s*[-–]\s+(?=[\d.]+[\s-]?(?:oz|ounces?|lbs?|g|grams?)\b)/i, '$1 x ')
    .replace(/^([\d./ ½⅓⅔¼¾⅛⅜⅝⅞]+?)\s*[-–]\s+(?=[a-z])/i, '$1 ');
  return amountMovedFirst(fromColumns(plain, isFood), isFood);
}

function fromColumns(line: string, isFood: IsFood): string {
  const columns = line
    .split(COLUMN)
    .map((column) => column.trim())
    .filter(Boolean);
  if (columns.length < 2) return columns[0] ?? line;
  const amounts = columns.filter((column) => isMeasureOnly(column, isFood));
  const words = columns.filter((column) => !amounts.includes(column));
  const weight = amounts.find((column) => isWeighed(readMeasures(wordsOf(column), isFood)));
  return [weight ?? amounts[0], words.join(' ')].filter(Boolean).join(' ');
}

const wordsOf = (text: string): string[] => unglued(text).split(' ').filter(Boolean);

/** "Salt, table 1 1/2 teaspoons", "Oatmeal, quick 3 quarts, dry": the amount stands behind the food. */
function amountMovedFirst(line: string, isFood: IsFood): string {
  if (/^[~\d.½⅓⅔¼¾⅕-⅞-]/.test(line)) return line;
  for (const match of line.matchAll(/[\s:=](?=[\d.½⅓⅔¼¾⅕-⅞])/g)) {
    if (isInParentheses(line, match.index)) continue;
    const food = line.slice(0, match.index).replace(/[\s:=,–—-]+$/, '');
    const [amount = '', ...after] = line.slice(match.index + 1).split(/,(?!\d{3}\b)/);
    if (!/\p{L}/u.test(food) || !isMeasureOnly(amount.replace(/[.;]+$/, ''), isFood)) continue;
    return [`${amount.trim()} ${food}`, ...after.map((part) => part.trim())].join(', ');
  }
  return line;
}

const isInParentheses = (text: string, at: number): boolean => {
  const before = text.slice(0, at);
  return (before.match(/\(/g)?.length ?? 0) > (before.match(/\)/g)?.length ?? 0);
};
