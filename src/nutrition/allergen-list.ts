import type { Allergen, AllergenMark } from './allergens.ts';
import { EU_ONLY_ALLERGENS, US_MAJOR_ALLERGENS } from './allergens.ts';

/** Whose list a kitchen answers by: FDA's nine, or the fourteen of Regulation (EU) 1169/2011 Annex II. */
export type AllergenList = 'us' | 'eu';

/**
 * The twelve tree nuts of FDA's list (Q&A Regarding Food Allergens, Edition 5, 6 January 2025, Table 1).
 * One row a nut; the spellings are what labels and cooks write.
 */
export const US_TREE_NUTS: readonly (readonly string[])[] = [
  ['almond'],
  ['black walnut'],
  ['brazil nut', 'brazilnut'],
  ['california walnut'],
  ['cashew'],
  ['hazelnut', 'filbert'],
  ['heartnut', 'japanese walnut'],
  ['macadamia', 'bush nut'],
  ['pecan'],
  ['pine nut', 'pinon'],
  ['pistachio'],
  ['walnut', 'english walnut', 'persian walnut'],
];

/** Taken off FDA's list on 6 January 2025 (same edition): named among ingredients, no longer under "Contains". */
export const REMOVED_FROM_US_LIST: readonly string[] = [
  'beech nut',
  'butternut',
  'chestnut',
  'chinquapin',
  'coconut',
  'cola nut',
  'kola nut',
  'ginkgo',
  'hickory',
  'palm nut',
  'pili',
  'shea',
];

/** Nuts of Regulation (EU) 1169/2011 Annex II no. 8; pine nut is not among them. */
export const EU_NUTS: readonly (readonly string[])[] = [
  ['almond'],
  ['hazelnut', 'filbert'],
  ['walnut', 'english walnut', 'persian walnut', 'black walnut', 'california walnut'],
  ['cashew'],
  ['pecan'],
  ['brazil nut', 'brazilnut'],
  ['pistachio'],
  ['macadamia', 'bush nut', 'queensland nut'],
];

/** The allergens a list asks a kitchen to answer for, in the order answers show them. */
export function allergensOnList(list: AllergenList): readonly Allergen[] {
  if (list === 'us') return US_MAJOR_ALLERGENS;
  return [...US_MAJOR_ALLERGENS.filter((a) => a !== 'wheat'), ...EU_ONLY_ALLERGENS];
}

const singular = (species: string): string =>
  species
    .toLowerCase()
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/_/g, ' ')
    .trim()
    .replace(/ies$/, 'y')
    .replace(/s$/, '');

/**
 * Whether a nut counts as a tree nut on this list. An unnamed nut counts: what is not known to be off is on.
 * @example isListedTreeNut('pine nuts', 'us') // true; 'eu' gives false
 */
export function isListedTreeNut(species: string | undefined, list: AllergenList): boolean {
  if (species === undefined) return true;
  const nut = singular(species);
  const listed = (list === 'us' ? US_TREE_NUTS : EU_NUTS).some((names) => names.includes(nut));
  if (listed) return true;
  const known = [...REMOVED_FROM_US_LIST, ...US_TREE_NUTS.flat(), ...EU_NUTS.flat()].includes(nut);
  return !known;
}

/** A mark as this list counts it: off-list nuts are `undefined`, wheat is a gluten cereal in the EU. */
export function onList(mark: AllergenMark, list: AllergenList): Allergen | undefined {
  if (mark.allergen === 'tree_nut') return isListedTreeNut(mark.species, list) ? 'tree_nut' : undefined;
  if (list === 'eu' && mark.allergen === 'wheat') return 'gluten_cereal';
  return allergensOnList(list).includes(mark.allergen) ? mark.allergen : undefined;
}
