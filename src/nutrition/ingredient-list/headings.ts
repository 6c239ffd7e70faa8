/** What follows is how to make it, not what goes in. */
const METHOD =
  /^\W*(?:directions?|method|instructions?|procedures?|preparation|steps|how to make(?: it)?)\W*$/i;
const HEADING =
  /^\W*(?:ingredients?(?: \(.*\))?|items?|measures?|weights?|amounts?|quantity|quantities|(?:for )?the [a-z ]+|[a-z ]+:|nutrition facts|recipe)\W*$/i;
const TABLE_HEAD =
  /^\W*(?:(?:ingredients?|items?|foods?|measures?|weights?|amounts?|quantity)[\s|\t]*){2,}\W*$/i;

/**
 * The lines of a pasted recipe that hold ingredients: without headings and rules of a table, and without the method
 * under its own heading.
 * @example ingredientLines(['Ingredients', '2 cups oats', 'Directions', 'Stir.']) // ['2 cups oats']
 */
export function ingredientLines(lines: readonly string[]): string[] {
  const method = lines.findIndex((line) => METHOD.test(line));
  const above = method < 0 ? lines : lines.slice(0, method);
  if (above.length < 2) return [...above];
  return above.filter((line) => !isHeading(line));
}

const isHeading = (line: string): boolean =>
  !/\d|[½⅓⅔¼¾⅛⅜⅝⅞]/.test(line) &&
  (HEADING.test(line) || TABLE_HEAD.test(line) || /^[\s|:–—-]+$/.test(line) || /^#/.test(line));
