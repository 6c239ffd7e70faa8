import { type AllergenMark, US_MAJOR_ALLERGENS } from '../../nutrition/allergens.ts';
import { allergenName, listed, needsOf } from '../need-words.ts';
import type { SlotValue } from '../slots.ts';

/** The allergens that a label is said to name; a cereal with gluten is wheat on a US label. */
export function marksOf(said: SlotValue | undefined): AllergenMark[] {
  const needs: readonly string[] = needsOf(said);
  return US_MAJOR_ALLERGENS.filter(
    (allergen) => needs.includes(allergen) || (allergen === 'wheat' && needs.includes('gluten')),
  ).map((allergen) => ({ allergen }));
}

/** "contains milk; may contain peanut"; empty when nothing was named. */
export const marksText = (contains: readonly AllergenMark[], advisory: readonly AllergenMark[]): string =>
  [...wordsFor('contains', contains), ...wordsFor('may contain', advisory)].join('; ');

const wordsFor = (verb: string, marks: readonly AllergenMark[]): string[] =>
  marks.length > 0
    ? [`${verb} ${listed([...new Set(marks.map(({ allergen }) => allergenName(allergen)))])}`]
    : [];
