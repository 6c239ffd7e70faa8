import { FOOD_WORDS, type FoodWordId } from '../../../nutrition/units/food-words.ts';
import { FIXED_UNITS } from '../../../nutrition/units/unit-table.ts';

/** Measures that only a food gives a size, and that a message counts as a measure, not as a piece of what is made. */
const COUNTED: ReadonlySet<FoodWordId> = new Set([
  'scoop',
  'stick',
  'slice',
  'packet',
  'package',
  'carton',
  'jar',
  'can',
  'bottle',
  'bag',
  'box',
  'case',
]);

/** Spellings of a measure that are everyday words in a message: "can we pack", "drop the sugar". */
const EVERYDAY: ReadonlySet<string> = new Set(['can', 'pack', 'packs', 'drop', 'drops', 'tub', 'tubs']);

/** Measures of the chat alone: what a label's vitamins are told in, and what has a size in no table. */
const OF_THE_CHAT: readonly (readonly [id: string, spellings: readonly string[]])[] = [
  ['mcg', ['mcg', 'microgram', 'micrograms']],
  ['tub', ['tub', 'tubs']],
  ['jug', ['jug', 'jugs']],
  ['handful', ['handful', 'handfuls']],
  ['spoon', ['spoon', 'spoons', 'spoonful', 'spoonfuls']],
];

/**
 * Measures and how they are spelled, lower case: those the nutrition room converts, without the label's own, and a few of
 * the chat. The ids are the ones slots use. Case decides T and t in the lexer.
 */
export const UNIT_SPELLINGS: readonly (readonly [id: string, spellings: readonly string[]])[] = [
  ...FIXED_UNITS.filter(({ id }) => !id.startsWith('label_')).map(spelled),
  ...FOOD_WORDS.filter(({ id }) => COUNTED.has(id)).map(spelled),
  ...OF_THE_CHAT,
];

function spelled({ id, spellings }: { id: string; spellings: readonly string[] }) {
  return [id, spellings.filter((word) => /^[a-z ]+$/.test(word) && !EVERYDAY.has(word))] as const;
}
