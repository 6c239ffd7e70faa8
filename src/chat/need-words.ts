import { type Allergen, NEEDS, type Need } from '../nutrition/allergens.ts';
import type { KitchenSettings } from '../nutrition/book.ts';
import type { SlotValue } from './slots.ts';

const ALLERGEN_NAMES: Partial<Record<Allergen, string>> = {
  tree_nut: 'tree nuts',
  egg: 'egg',
  shellfish: 'crustacean shellfish',
  gluten_cereal: 'cereals with gluten',
  mollusc: 'molluscs',
  pumpkin_seed: 'pumpkin seed',
};

/** An allergen as people read it: "tree nuts". */
export const allergenName = (allergen: string): string =>
  ALLERGEN_NAMES[allergen as Allergen] ?? allergen.replaceAll('_', ' ');

const NEED_NAMES: Partial<Record<Need, string>> = {
  animal: 'animal products',
  meat: 'meat',
  added_sugar: 'added sugar',
  lactose: 'lactose',
  gluten: 'gluten',
};

/** The needs among these words, in the order of the shared list. */
export const needsAmong = (said: readonly string[]): readonly Need[] =>
  NEEDS.filter((need) => said.includes(need));

/** What a need avoids, as people read it. */
export const needName = (need: Need): string => NEED_NAMES[need] ?? allergenName(need);

const FREE_WORDS: Partial<Record<Need, string>> = {
  tree_nut: 'tree-nut-free',
  milk: 'dairy-free',
  animal: 'vegan',
  meat: 'vegetarian',
  added_sugar: 'no-added-sugar',
  sulphites: 'sulphite-free',
};

/** Needs as people ask for them: "nut-free and vegan". What a button says must be read back as the same needs. */
export function freeWords(needs: readonly Need[]): string {
  const isNutFree = needs.includes('peanut') && needs.includes('tree_nut');
  const others = needs.filter((need) => !isNutFree || (need !== 'peanut' && need !== 'tree_nut'));
  const words = others.map((need) => FREE_WORDS[need] ?? `${need}-free`);
  return listed(isNutFree ? ['nut-free', ...words] : words);
}

/** "peanut, tree nuts and milk". */
export function listed(words: readonly string[], last = 'and'): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}

/** The needs of an `avoid` slot, in the order of the shared list, each once; unknown words are left to the reader. */
export function needsOf(avoid: SlotValue | undefined): Need[] {
  const said: readonly unknown[] = Array.isArray(avoid) ? avoid : [avoid];
  return NEEDS.filter((need) => said.includes(need));
}

export const CROSS_CONTACT =
  'Cross-contact in the kitchen: not checked. This goes by recipes and labels only; read the packages in use.';

/** Short and specific: only where an allergy, and not a preference, is asked about. */
export function reactionCaution(settings: KitchenSettings): string {
  return `Past severe reaction: follow your own plan, not this list, and ask ${settings.contacts.dietitian}. In a reaction: epinephrine auto-injector, call ${settings.emergencyNumber}.`;
}

/** Halal and kosher are read as "no pork", which is less than either asks for. */
export const widerThanPork = (text: string, needs: readonly Need[]): readonly string[] =>
  needs.includes('pork') && /\b(?:halal|kosher)\b/i.test(text)
    ? [
        'Checked for pork only. Halal and kosher ask for more, such as certification, gelatin and alcohol: ask the dietitian.',
      ]
    : [];

const PREFERENCES: readonly Need[] = ['animal', 'meat', 'pork', 'added_sugar', 'lactose'];

export const isAllergy = (needs: readonly Need[]): boolean => needs.some((n) => !PREFERENCES.includes(n));

export const AVENIN_NOTE =
  'Oats labelled gluten-free: a few people with coeliac disease react to oats themselves (avenin). Eat them only if your clinician agrees.';
