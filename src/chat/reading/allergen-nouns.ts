import type { Need } from '../../nutrition/allergens.ts';
import { stems } from './stem.ts';
import { ALLERGEN_NOUNS } from './vocabulary/needs.ts';

const byNoun: ReadonlyMap<string, readonly Need[]> = new Map(
  ALLERGEN_NOUNS.flatMap(([needs, nouns]) =>
    nouns.map((noun): [string, readonly Need[]] => [stems(noun).join(' '), needs]),
  ),
);

/**
 * What a noun means as something to avoid.
 * @example needsOfNoun('nuts') // ['peanut', 'tree_nut']
 */
export const needsOfNoun = (noun: string): readonly Need[] | undefined => byNoun.get(stems(noun).join(' '));
