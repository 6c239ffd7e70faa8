/** Words that stand for a whole number. */
export const WHOLE_WORDS: ReadonlyMap<string, number> = new Map([
  ['zero', 0],
  ['one', 1],
  ['two', 2],
  ['three', 3],
  ['four', 4],
  ['five', 5],
  ['six', 6],
  ['seven', 7],
  ['eight', 8],
  ['nine', 9],
  ['ten', 10],
  ['eleven', 11],
  ['twelve', 12],
  ['thirteen', 13],
  ['fourteen', 14],
  ['fifteen', 15],
  ['sixteen', 16],
  ['seventeen', 17],
  ['eighteen', 18],
  ['nineteen', 19],
  ['twenty', 20],
  ['thirty', 30],
  ['forty', 40],
  ['fourty', 40],
  ['fifty', 50],
  ['sixty', 60],
  ['seventy', 70],
  ['eighty', 80],
  ['ninety', 90],
]);

/** Words that multiply what stands before them, or stand for themselves ("a dozen"). */
export const MULTIPLE_WORDS: ReadonlyMap<string, number> = new Map([
  ['dozen', 12],
  ['dozens', 12],
  ['doz', 12],
  ['dz', 12],
  ['hundred', 100],
  ['thousand', 1000],
  ['couple', 2],
  ['pair', 2],
]);

/** Words for a part: numerator 1, this denominator. */
export const PART_WORDS: ReadonlyMap<string, number> = new Map([
  ['half', 2],
  ['halves', 2],
  ['third', 3],
  ['thirds', 3],
  ['quarter', 4],
  ['quarters', 4],
  ['fourth', 4],
  ['fourths', 4],
  ['eighth', 8],
  ['eighths', 8],
]);

/** The single-character fractions of Unicode, as ratios. */
export const VULGAR_FRACTIONS: ReadonlyMap<string, string> = new Map([
  ['½', '1/2'],
  ['⅓', '1/3'],
  ['⅔', '2/3'],
  ['¼', '1/4'],
  ['¾', '3/4'],
  ['⅕', '1/5'],
  ['⅖', '2/5'],
  ['⅗', '3/5'],
  ['⅘', '4/5'],
  ['⅙', '1/6'],
  ['⅚', '5/6'],
  ['⅛', '1/8'],
  ['⅜', '3/8'],
  ['⅝', '5/8'],
  ['⅞', '7/8'],
]);
