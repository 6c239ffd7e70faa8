import { UNLISTED_CONCERNS } from './allergens.ts';
import type { Food, Portion, Role } from './food.ts';
import type { NutrientKey } from './nutrients.ts';
import { type Form, formOf } from './swap/form.ts';
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
  /** How many of the portion: a quarter where it is a cup of seeds. */
  readonly count: 1 | 0.25;
}

/** How a snack stands against the rule: a carbohydrate source, a protein source, and color. */
export interface SnackCheck {
  readonly there: readonly SnackPart[];
  readonly missing: readonly SnackPart[];
  /** One for each missing part that the foods table can fill; a fruit that fills two stands once. */
  readonly additions: readonly SnackAddition[];
}

/**
 * Checks one snack (the amounts of one piece or plate): carbohydrate source, protein source, and color, which is a
 * fruit, a vegetable or a mostly unsaturated fat. A part nobody has figures for counts as missing.
 * Additions come from `foods`: what is handed over beside such a snack, first what brings in no new allergen; a
 * package only when the dietitian approved it.
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
    additions: partsToFill(missing).flatMap((part) => fittingAddition(part, snack, table) ?? []),
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

/** A fruit brings carbohydrate and color at once. */
const partsToFill = (missing: readonly SnackPart[]): readonly SnackPart[] =>
  missing.includes('carbohydrate') ? missing.filter((part) => part !== 'color') : missing;

const FILLS: { readonly [part in SnackPart]: { role: Role; key?: NutrientKey; least?: number } } = {
  carbohydrate: { role: 'color', key: 'carbohydrateG', least: SNACK_LEAST.carbohydrateG },
  protein: { role: 'protein', key: 'proteinG', least: SNACK_LEAST.protein },
  color: { role: 'color' },
};

/** Protein that is handed over beside a snack, most usual first; hummus only beside a savory one. Common practice, no source. */
const PROTEIN_FORMS: readonly Form[] = ['yogurt', 'cheese', 'soft_cheese', 'egg', 'seed', 'nut'];
const SAVORY_FORMS: ReadonlySet<Form> = new Set<Form>([
  'meat',
  'fish',
  'cheese',
  'egg',
  'bean_spread',
  'plant_protein',
  'vegetable',
  'starchy_vegetable',
  'sauce',
]);
/** Names of what lies ready at a fueling station. Common practice, no source. */
const FRUIT_FIRST = [/^banana\b/i, /^apple\b/i, /^orange\b/i, /^grapes\b/i, /^strawberries\b/i];
const VEGETABLE_FIRST = [/^carrots\b/i, /^bell pepper/i, /^cucumber/i];

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
  const there = new Set(snack.map((amount) => headOf(amount.food)));
  const isSavory = snack.some((amount) => SAVORY_FORMS.has(formOf(amount.food)));
  const fitting = table
    .filter((food) => food.roles.includes(fills.role) && !there.has(headOf(food)) && mayBeOffered(food))
    .flatMap((food) => {
      const handed = handedOver(food);
      const grams = handed && fills.key ? ((food.per100g[fills.key] ?? 0) * massOfOne(handed)) / 100 : 0;
      return handed && grams >= (fills.least ?? 0) ? [{ part, food, ...handed }] : [];
    });
  const rank = (food: Food) => usualness(food, part, isSavory);
  const news = (food: Food) => newAllergens(food, snack);
  return fitting
    .filter(({ food }) => rank(food) !== undefined)
    .sort(
      (a, b) => news(a.food) - news(b.food) || (rank(a.food) ?? 0) - (rank(b.food) ?? 0) || byHandiness(a, b),
    )[0];
}

type Handed = Pick<SnackAddition, 'portion' | 'count'>;

const massOfOne = ({ portion, count }: Handed): number => portion.massG * count;

const headOf = (food: Food): string => (food.name.split(',')[0] ?? food.name).toLowerCase();

/** Lower is more usual; `undefined` for what nobody puts beside such a snack. */
function usualness(food: Food, part: SnackPart, isSavory: boolean): number | undefined {
  const form = formOf(food);
  if (part === 'protein') {
    const at = PROTEIN_FORMS.indexOf(form);
    if (at >= 0) return at;
    return isSavory && form === 'bean_spread' ? PROTEIN_FORMS.length : undefined;
  }
  const first = part === 'color' && isSavory ? VEGETABLE_FIRST : FRUIT_FIRST;
  const at = first.findIndex((name) => name.test(food.name));
  return at >= 0 ? at : first.length;
}

/** Allergens on its label, or in its kind, that the snack does not have yet; what is on no list weighs half. */
function newAllergens(food: Food, snack: readonly FoodAmount[]): number {
  const had = new Set(snack.flatMap((amount) => amount.food.contains.map((mark) => mark.allergen)));
  const news = [...food.contains, ...food.advisory].filter((mark) => !had.has(mark.allergen));
  const unlisted: readonly string[] = UNLISTED_CONCERNS;
  return news.reduce((sum, { allergen }) => sum + (unlisted.includes(allergen) ? 0.5 : 1), 0);
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

/** Nuts and seeds go by the quarter cup. */
function handedOver(food: Food): Handed | undefined {
  const form = formOf(food);
  const count = form === 'seed' || form === 'nut' ? 0.25 : 1;
  const fit = food.portions.filter(({ massG }) => massG * count >= 15 && massG * count <= 250);
  const ranked = fit.filter(({ unit }) => HANDED_OVER.includes(unit) && (count === 1 || unit === 'cup'));
  const [portion] = ranked.sort((a, b) => HANDED_OVER.indexOf(a.unit) - HANDED_OVER.indexOf(b.unit));
  return portion && { portion, count };
}

function byHandiness(a: SnackAddition, b: SnackAddition): number {
  const unit = (addition: SnackAddition) => HANDED_OVER.indexOf(addition.portion.unit);
  const salted = ({ food }: SnackAddition) => Number(/\bsalted\b/i.test(food.name));
  return (
    salted(a) - salted(b) ||
    unit(a) - unit(b) ||
    a.food.name.length - b.food.name.length ||
    a.food.id.localeCompare(b.food.id)
  );
}
