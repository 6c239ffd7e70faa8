/** A count at most this many digits is a yield; more is a telephone number. */
const COUNT = String.raw`(\d{1,6})`;
const PIECES =
  'bars?|bites?|pieces?|balls?|servings?|squares?|muffins?|cups?|people|athletes|portions?|rolls?|cookies|pancakes|wraps?|smoothies|parfaits?|jars?|slices|cakes|squares|crackers|biscuits';
/** "24 - 4 inch pancakes", "12 (2 oz) muffins", "24 4-inch": how large one is, on the same line. */
const SIZE = String.raw`(?:[ \t]*[-–(][ \t]*[\d./]+[ \t-]*(?:inch(?:es)?|in|oz|ounces?|cups?|g)\b\.?\)?|[ \t]+\d+[ -]?inch(?:es)?\b)?`;

const SAID: readonly RegExp[] = [
  // "makes 24", "Yield: about 12 bars", "servings: 25", "Number of portions: 48"
  new RegExp(
    String.raw`(?:^|[\s,;.(])(?:and\s+)?(?:it\s+)?(?:makes?|yields?|yield:?|cut in(?:to)?|serves|divided into|(?:number of )?(?:servings|portions|pieces)\s*[:=])\s*:?\s*(?:about\s+)?${COUNT}(?!\s*(?:cups?|tbsp|tsp|g|oz|lb|x)\b)${SIZE}(?:[ \t]+(?:[a-z]+[ \t]+)?(?:${PIECES})\b)?[).]?(?=$|[\s,;.])`,
    'i',
  ),
  // A line or a part of its own: "25 servings", "(about 12 servings)", "for 6 servings"
  new RegExp(
    String.raw`(?:^|[\n;,.:(])[ \t]*(?:for\s+|about\s+|per\s+)*${COUNT}\s+(?:servings?|portions?|people|athletes|pieces)\b[ \t]*[).:]?[ \t]*(?=$|[\n;,])`,
    'i',
  ),
  // At the end: "... honey 1 cup; for 50"
  new RegExp(String.raw`[\s,;]for\s+${COUNT}(?:\s+(?:${PIECES}))?[.)]?\s*$`, 'i'),
];

/** How many pieces a list says it makes, and the list without the words that said so. */
export interface SaidYield {
  readonly list: string;
  readonly pieces?: number;
}

/**
 * Takes the yield out of a typed or pasted list.
 * @example readYield('2 cups oats; makes about 12 bars').pieces // 12
 */
export function readYield(text: string): SaidYield {
  for (const pattern of SAID) {
    const match = pattern.exec(text);
    const pieces = Number(match?.[1] ?? 0);
    if (match && pieces > 0) return { list: text.replace(match[0], ' ; '), pieces };
  }
  return { list: text };
}
