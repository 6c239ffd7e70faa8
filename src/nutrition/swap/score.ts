import { ROLES, type Role } from '../food.ts';
import { isPlain } from '../food-nature.ts';
import { affinity } from './form.ts';
import { type Candidate, MAKE_UP, needBits } from './table.ts';

/** What of the recipe and its kitchen bears on a choice. */
export interface Setting {
  /** Nothing is baked after mixing, so everything must be ready to eat. */
  readonly noBake: boolean;
  readonly savory: boolean;
  readonly roomStorage: boolean;
  /** Foods the kitchen's recipes already use. */
  readonly inKitchen: ReadonlySet<string>;
  /** Foods already in this recipe. */
  readonly inRecipe: ReadonlySet<string>;
  /** Bit `i`: nothing in the recipe speaks against `NEEDS[i]`, so that a swap had better not either. */
  readonly clear: number;
  /** Bit `i`: the recipe contains `US_MAJOR_ALLERGENS[i]` already. */
  readonly majors: number;
}

/** What people eat a recipe for that a swap in passing must not take away. */
const KEPT_NEEDS = needBits([
  'peanut',
  'tree_nut',
  'milk',
  'egg',
  'wheat',
  'gluten',
  'soy',
  'sesame',
  'fish',
  'shellfish',
  'lactose',
  'animal',
  'meat',
  'pork',
]);
/** Unread labels speak against everything at once; beyond this they weigh no more. */
const MOST_LOST = 1.2;

/** Protein counts double: it is what the snack is made for. */
const WEIGHTS = MAKE_UP.map((key) => (key === 'proteinG' ? 2 : 1));

/** One less half the weighted difference of known figures per gram: 1 is the same make-up. */
export function likeness(a: Candidate, b: Candidate): number {
  let difference = 0;
  for (let i = 0; i < MAKE_UP.length; i++) {
    const d = Math.abs((a.makeUp[i] ?? 0) - (b.makeUp[i] ?? 0));
    if (!Number.isNaN(d)) difference += d * (WEIGHTS[i] ?? 1);
  }
  return 1 - Math.min(1, difference / 2);
}

const bitCount = (bits: number): number => {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count++;
  return count;
};

/**
 * How well a cook would like `to` in the place of `from`; `undefined` when not at all. The weights are judgment
 * (common practice, no source): form first, then make-up, then what the kitchen has, then flavor.
 */
export function scoreOf(from: Candidate, to: Candidate, role: Role, setting: Setting): number | undefined {
  if (to === from || (setting.noBake && !to.readyToEat)) return undefined;
  if (to.savory && !from.savory && !setting.savory) return undefined;
  if (to.food.pork && !from.food.pork) return undefined;
  const near = nearness(from, to, role);
  const alike = likeness(from, to);
  if (near === 0 || !sameSpecial(from, to, role, alike)) return undefined;
  const shared = bitCount(from.roles & to.roles) / Math.max(1, bitCount(from.roles | to.roles));
  let score = 4 * near + 2 * alike + 0.6 * shared;
  if (setting.inKitchen.has(to.food.id)) score += 0.4;
  if (to.food.allergenBasis === 'label') score += 0.2;
  if (to.food.price) score += 0.1;
  if (to.food.allergenBasis === 'kind' && !isPlain(to.food)) score -= 0.3;
  if (setting.inRecipe.has(to.food.id)) score -= 0.4;
  if (setting.roomStorage && to.food.storage === 'cold') score -= 0.6;
  if (to.flavor !== undefined && to.flavor !== from.flavor) score -= from.flavor === undefined ? 0.6 : 0.4;
  if (to.savory !== from.savory) score -= 0.5;
  score -= 0.04 * bitCount(to.majors & ~from.majors);
  return score - lostNeeds(to, setting) - tooMuch(from, to);
}

/** A mashed fruit binds; a whole one beside it does not. */
function nearness(from: Candidate, to: Candidate, role: Role): number {
  if (role !== 'binder' || from.form !== 'fresh_fruit') return affinity(from.form, to.form);
  if (to.form === 'fruit_puree') return 0.9;
  return to.form === 'fresh_fruit' ? 0.5 : 0;
}

function lostNeeds(to: Candidate, setting: Setting): number {
  const lost = bitCount(setting.clear & KEPT_NEEDS & ~to.clear);
  return Math.min(MOST_LOST, 0.35 * lost) + 0.3 * bitCount(to.majors & ~setting.majors);
}

/** Much stronger or much finer than what it stands in for: cloves for cinnamon, powdered sugar for brown. */
const tooMuch = (from: Candidate, to: Candidate): number =>
  (STRONG.test(to.food.name) && !STRONG.test(from.food.name) ? 1.5 : 0) +
  (/powdered/i.test(to.food.name) && !/powdered/i.test(from.food.name) ? 0.5 : 0);
const STRONG = /cloves|cayenne|chili|turmeric/i;

/** Leavening, salt and catch-all forms are too unlike inside to be swapped on form alone. */
function sameSpecial(from: Candidate, to: Candidate, role: Role, alike: number): boolean {
  if (from.form === 'leavening') return kindOfLeavening(from) === kindOfLeavening(to);
  if (from.form === 'other' || from.form === 'sauce') return alike > 0.8 && from.food.group === to.food.group;
  if (from.form === 'egg') return isCooked(from) === isCooked(to);
  if (from.form === 'spice' || from.form === 'extract') return role === 'flavor' && from.savory === to.savory;
  return true;
}

const isCooked = ({ food }: Candidate): boolean => /boiled|cooked|scrambled|fried/i.test(food.name);

const kindOfLeavening = (c: Candidate): string | undefined =>
  /soda|powder|yeast/i.exec(c.food.name)?.[0].toLowerCase();

export const roleBit = (role: Role): number => 1 << ROLES.indexOf(role);
