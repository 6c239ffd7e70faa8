import { MULTIPLE_WORDS, PART_WORDS, WHOLE_WORDS } from '../../../nutrition/quantity/number-words.ts';

/** Words for whole numbers; "one" counts only before a thing that can be counted. */
export const NUMBER_WORDS = WHOLE_WORDS;

export const MULTIPLES = MULTIPLE_WORDS;

export const PARTS: ReadonlyMap<string, number> = new Map(
  [...PART_WORDS].map(([word, denominator]) => [word, 1 / denominator]),
);

export const FACTOR_WORDS: ReadonlyMap<string, number> = new Map([
  ['double', 2],
  ['doubled', 2],
  ['doubling', 2],
  ['triple', 3],
  ['tripled', 3],
  ['quadruple', 4],
  ['halve', 0.5],
  ['halved', 0.5],
  ['twice', 2],
  ['thrice', 3],
]);
