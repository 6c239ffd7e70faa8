import { NEEDS, type Need, US_MAJOR_ALLERGENS } from '../allergens.ts';
import { conflictsWith } from '../conflict.ts';
import { type Food, ROLES, type Role } from '../food.ts';
import type { NutrientKey } from '../nutrients.ts';
import { FORMS, type Form, formOf } from './form.ts';

/** A food as the search sees it: bits and small arrays made once, so that a search never reads text. */
export interface Candidate {
  readonly food: Food;
  readonly form: Form;
  /** Bit `i`: can play `ROLES[i]`. */
  readonly roles: number;
  /** Bit `i`: nothing speaks against it for `NEEDS[i]`. */
  readonly clear: number;
  /** Bit `i`: contains `US_MAJOR_ALLERGENS[i]`, to prefer swaps that bring in nothing new. */
  readonly majors: number;
  /** Grams per gram of the figures that make foods alike; NaN where unknown, and never let out. */
  readonly makeUp: Float64Array;
  readonly readyToEat: boolean;
  readonly savory: boolean;
  readonly flavor: string | undefined;
  /** False for a package, and any protein powder, the dietitian has not approved: it is never proposed. */
  readonly approved: boolean;
}

export interface SwapTable {
  readonly candidates: readonly Candidate[];
  readonly byRole: ReadonlyMap<Role, readonly Candidate[]>;
  readonly byForm: ReadonlyMap<Form, readonly Candidate[]>;
  readonly byId: ReadonlyMap<string, Candidate>;
}

export const MAKE_UP: readonly NutrientKey[] = [
  'waterG',
  'proteinG',
  'fatG',
  'carbohydrateG',
  'sugarsG',
  'fiberG',
];

const tables = new WeakMap<ReadonlyMap<string, Food>, SwapTable>();

/** The whole food table ready for searching; compiled once for a book's foods. */
export function swapTable(foods: ReadonlyMap<string, Food>): SwapTable {
  const ready = tables.get(foods);
  if (ready) return ready;
  const candidates = [...foods.values()].map(candidateOf);
  const table: SwapTable = {
    candidates,
    byRole: new Map(
      ROLES.map((role, place) => [role, candidates.filter((c) => c.approved && (c.roles >> place) & 1)]),
    ),
    byForm: new Map(FORMS.map((form) => [form, candidates.filter((c) => c.approved && c.form === form)])),
    byId: new Map(candidates.map((c) => [c.food.id, c])),
  };
  tables.set(foods, table);
  return table;
}

/** The bits of these needs, to test against `Candidate.clear`. */
export const needBits = (needs: readonly Need[]): number =>
  needs.reduce((bits, need) => bits | (1 << NEEDS.indexOf(need)), 0);

export const isClear = (candidate: Candidate, bits: number): boolean => (candidate.clear & bits) === bits;

export function candidateOf(food: Food): Candidate {
  const form = formOf(food);
  return {
    food,
    form,
    roles: ROLES.reduce((bits, role, place) => bits | (food.roles.includes(role) ? 1 << place : 0), 0),
    clear: NEEDS.reduce(
      (bits, need, place) => bits | (conflictsWith(food, need) === 'clear_by_label' ? 1 << place : 0),
      0,
    ),
    majors: US_MAJOR_ALLERGENS.reduce(
      (bits, allergen, place) => bits | (food.contains.some((m) => m.allergen === allergen) ? 1 << place : 0),
      0,
    ),
    makeUp: Float64Array.from(MAKE_UP, (key) => (food.per100g[key] ?? Number.NaN) / 100),
    readyToEat: isReadyToEat(food, form),
    savory: isSavory(food, form),
    flavor: flavorOf(food),
    approved: isApproved(food, form),
  };
}

/** A package the dietitian has turned down or not yet seen is not proposed; a powder needs a package at all. */
const isApproved = (food: Food, form: Form): boolean =>
  food.product?.approvedByDietitian ?? !isProteinPowder(food, form);

/** Dry and half protein or more, whatever it is called. */
const isProteinPowder = (food: Food, form: Form): boolean =>
  form === 'protein_powder' ||
  food.product?.proteinSource !== undefined ||
  (form === 'dry_powder' && (food.per100g.proteinG ?? 0) >= 50);

/** Raw flour, raw egg and raw meat are not eaten from a bowl (FDA consumer advice; common practice for the rest). */
function isReadyToEat(food: Food, form: Form): boolean {
  if (form === 'flour') return /heat-treated|ready.to.eat|bran|germ, toasted|peanut/i.test(food.name);
  if (form === 'egg' || form === 'meat' || form === 'fish')
    return !/\braw\b/i.test(
      `${food.name} ${food.source.kind === 'usda_sr28' ? food.source.description : ''}`,
    );
  return !/uncooked|quinoa, raw|dry pasta|pasta, .*dry|groats|steel.cut|raw, enriched|millet, raw|tempeh|whole oats|oats, whole grain/i.test(
    food.name,
  );
}

const SAVORY_FORMS: ReadonlySet<Form> = new Set<Form>(['meat', 'fish', 'cheese', 'sauce', 'salt']);
const SWEET_VEGETABLE = /carrot|pumpkin|sweet potato|zucchini|beet/i;

function isSavory(food: Food, form: Form): boolean {
  if (SAVORY_FORMS.has(form)) return true;
  if (form === 'vegetable') return !SWEET_VEGETABLE.test(food.name);
  if (form === 'plant_protein') return !/silken|soft tofu|tofu, soft/i.test(food.name);
  return /garlic|onion|savory|mustard|sesame oil|olive|everything|pepper|cumin|oregano|chili|curry|saltine|popcorn/i.test(
    food.name,
  );
}

function flavorOf(food: Food): string | undefined {
  const said = food.product?.flavor?.toLowerCase();
  if (said && !/unflavou?red|plain/.test(said)) return said;
  return /\b(chocolate|cocoa|vanilla|strawberry|cinnamon|coffee|banana)\b/i
    .exec(food.name)?.[1]
    ?.toLowerCase();
}
