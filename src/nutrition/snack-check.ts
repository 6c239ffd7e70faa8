import type { Food, Portion, Role } from './food.ts';
import type { NutrientKey } from './nutrients.ts';
import { type FoodAmount, totals } from './totals.ts';

/** What a snack is made of. Common practice, no source. */
export type SnackPart = 'carbohydrate' | 'protein' | 'color';

/** Grams in one snack from which a part counts as there. Common practice, no source (one exchange of each). */
export const SNACK_LEAST = { carbohydrateG: 15, protein: 7, colorFoodG: 10, healthyFatG: 5 } as const;

/** Something to put beside a snack that lacks a part. */
export interface SnackAddition {
  readonly part: SnackPart;
  readonly food: Food;
  readonly portion: Portion;
}

/** How a snack stands against the rule: a carbohydrate source, a protein source, and color. */
export interface SnackCheck {
  readonly there: readonly SnackPart[];
  readonly missing: readonly SnackPart[];
  /** One for each missing part that the foods table can fill. */
  readonly additions: readonly SnackAddition[];
}

/**
 * Checks one snack (the amounts of one piece or plate): carbohydrate source, protein source, and color, which is a
 * fruit, a vegetable or a mostly unsaturated fat. A part nobody has figures for counts as missing.
 * Additions come from `foods`, fewest allergens first; a protein powder only when the dietitian approved it.
 */
export function snackCheck(snack: readonly FoodAmount[], foods: Iterable<Food>): SnackCheck {
  const whole = totals(snack);
  const holds: Record<SnackPart, boolean> = {
    carbohydrate: (whole.of('carbohydrateG').value ?? 0) >= SNACK_LEAST.carbohydrateG,
    protein: (whole.of('proteinG').value ?? 0) >= SNACK_LEAST.protein,
    color: hasColor(snack),
  };
  const parts = Object.keys(holds) as SnackPart[];
  const missing = parts.filter((part) => !holds[part]);
  const table = missing.length > 0 ? [...foods] : [];
  return {
    there: parts.filter((part) => holds[part]),
    missing,
    additions: missing.flatMap((part) => fittingAddition(part, snack, table) ?? []),
  };
}

function hasColor(snack: readonly FoodAmount[]): boolean {
  const fruit = massOf(snack, (food) => food.roles.includes('color'));
  if (fruit >= SNACK_LEAST.colorFoodG) return true;
  const unsaturated = snack.filter((amount) => isMostlyUnsaturated(amount.food));
  return (totals(unsaturated).of('fatG').value ?? 0) >= SNACK_LEAST.healthyFatG;
}

function massOf(snack: readonly FoodAmount[], is: (food: Food) => boolean): number {
  return snack.reduce((sum, amount) => sum + (is(amount.food) ? amount.massG : 0), 0);
}

/** A food that is a source of fat, two thirds of it or more unsaturated: nut and seed butters, nuts, avocado. */
function isMostlyUnsaturated(food: Food): boolean {
  const { fatG, saturatedFatG } = food.per100g;
  if (fatG === undefined || saturatedFatG === undefined || fatG < 10) return false;
  return saturatedFatG <= fatG / 3;
}

const FILLS: { readonly [part in SnackPart]: { role: Role; key?: NutrientKey; least?: number } } = {
  carbohydrate: { role: 'color', key: 'carbohydrateG', least: SNACK_LEAST.carbohydrateG },
  protein: { role: 'protein', key: 'proteinG', least: SNACK_LEAST.protein },
  color: { role: 'color' },
};

/** Measures a person can hand over; `cup` and `slice` go for what has no piece of its own. */
const HANDED_OVER = [
  'medium',
  'each',
  'large',
  'small',
  'fruit',
  'stick',
  'packet',
  'container',
  'cup',
  'slice',
];

function fittingAddition(
  part: SnackPart,
  snack: readonly FoodAmount[],
  table: readonly Food[],
): SnackAddition | undefined {
  const fills = FILLS[part];
  const there = new Set(snack.map((amount) => amount.food.id));
  const fitting = table
    .filter((food) => food.roles.includes(fills.role) && !there.has(food.id) && mayBeOffered(food))
    .flatMap((food) => {
      const portion = handedOver(food);
      const grams = portion && fills.key ? ((food.per100g[fills.key] ?? 0) * portion.massG) / 100 : 0;
      return portion && grams >= (fills.least ?? 0) ? [{ part, food, portion }] : [];
    });
  return fitting.sort(byCare)[0];
}

/** Names of what is not eaten as it is. Whether a fruit is raw does not matter; whether meat or flour is does. */
const NOT_READY =
  /\b(?:flour|powder|dry|dried|isolate|concentrate|meal|uncooked|flakes?|bran|germ|substitute|granules)\b/i;
const RAW = /\braw\b/i;

/** Powders and other packages only with the dietitian's approval; what needs a warning is not a casual addition. */
function mayBeOffered(food: Food): boolean {
  if (food.note !== undefined) return false;
  const words = `${food.name} ${food.source.kind === 'usda_sr28' ? food.source.description : ''}`;
  if (NOT_READY.test(words) || (RAW.test(words) && !food.roles.includes('color'))) return false;
  return food.product === undefined || food.product.approvedByDietitian;
}

function handedOver(food: Food): Portion | undefined {
  const fit = food.portions.filter((portion) => portion.massG >= 15 && portion.massG <= 250);
  const ranked = fit.filter((portion) => HANDED_OVER.includes(portion.unit));
  return ranked.sort((a, b) => HANDED_OVER.indexOf(a.unit) - HANDED_OVER.indexOf(b.unit))[0];
}

function byCare(a: SnackAddition, b: SnackAddition): number {
  const allergens = (food: Food) => food.contains.length + food.advisory.length;
  const unit = (addition: SnackAddition) => HANDED_OVER.indexOf(addition.portion.unit);
  return (
    allergens(a.food) - allergens(b.food) ||
    unit(a) - unit(b) ||
    a.food.name.length - b.food.name.length ||
    a.food.id.localeCompare(b.food.id)
  );
}
