import {
  type AllergenMark,
  EU_ONLY_ALLERGENS,
  UNLISTED_CONCERNS,
  US_MAJOR_ALLERGENS,
} from '../nutrition/allergens.ts';

type Allergen = AllergenMark['allergen'];

const ALLERGENS: readonly Allergen[] = [...US_MAJOR_ALLERGENS, ...EU_ONLY_ALLERGENS, ...UNLISTED_CONCERNS];
const KNOWN: ReadonlySet<string> = new Set(ALLERGENS);

/** The law wants the kind named for these: FD&C Act 403(w). */
const SPECIES_NAMED: ReadonlySet<string> = new Set(['tree_nut', 'fish', 'shellfish']);

/** What a column or list of allergens may hold, for hints. */
export const ALLERGEN_HINT =
  `Write allergens as ${ALLERGENS.join(', ')}; ` +
  'name the kind after a colon where the law wants it: tree_nut:almond, fish:tuna, shellfish:shrimp.';

/**
 * Reads one allergen as the folder writes it. Returns the mark, or what is wrong with the word.
 *
 * @example
 * readAllergen('tree_nut:almond') // { allergen: 'tree_nut', species: 'almond' }
 * readAllergen('nuts')            // '"nuts" is not an allergen this kitchen knows'
 */
export function readAllergen(word: string): AllergenMark | string {
  const [allergen = '', species] = word.split(':').map((part) => part.trim().toLowerCase());
  if (!isAllergen(allergen)) return `"${word}" is not an allergen this kitchen knows`;
  if (SPECIES_NAMED.has(allergen) && (species ?? '') === '') return `"${word}" must name the kind`;
  return species === undefined || species === '' ? { allergen } : { allergen, species };
}

function isAllergen(word: string): word is Allergen {
  return KNOWN.has(word);
}

/**
 * EU law counts wheat among the cereals with gluten, so wheat in the folder stands for both.
 * Source: Regulation (EU) 1169/2011, Annex II, 1.
 */
export function withImplied(marks: readonly AllergenMark[]): readonly AllergenMark[] {
  const wheat = marks.some((mark) => mark.allergen === 'wheat');
  const told = marks.some((mark) => mark.allergen === 'gluten_cereal' && mark.species === 'wheat');
  return wheat && !told ? [...marks, { allergen: 'gluten_cereal', species: 'wheat' }] : marks;
}
