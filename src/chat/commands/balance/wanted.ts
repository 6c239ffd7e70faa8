import type { FoodLimit, Limit } from '../../../nutrition/balance/question.ts';
import type { Book } from '../../../nutrition/book.ts';
import type { Food } from '../../../nutrition/food.ts';
import { massOf } from '../../../nutrition/portion/mass-of.ts';
import { commonPackage } from '../../../nutrition/portion/package-portion.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Recipe, RecipeLine } from '../../../nutrition/recipe.ts';
import type { Slots, Target } from '../../slots.ts';
import { itemLine, slotList, slotNumber, slotTargets } from '../macros/slot-values.ts';
import { inOwnUnit, targetBound, targetKey } from '../macros/targets.ts';
import { linesMeant, requireLines } from '../swap/lines-meant.ts';

/** A piece said to weigh so much, or a wet to dry said, may be this share more or less. Common practice, no source. */
const ABOUT = 0.03;

/** The limits a request states, per piece. Throws `bad_option` for a nutrient nobody carries, `bad_quantity`. */
export function limitsWanted(slots: Slots): Limit[] {
  const sure = slots.even_if_scooped === true;
  const pieceG = slotNumber(slots, 'piece_g');
  const measure = { kind: 'piece_mass' } as const;
  return [
    ...slotTargets(slots).map((target) => limitOf(target, sure)),
    ...wetDryLimits(slots),
    ...(pieceG === undefined
      ? []
      : ([
          { measure, bound: 'least', amount: pieceG * (1 - ABOUT), from: 'asked' },
          { measure, bound: 'most', amount: pieceG * (1 + ABOUT), from: 'asked' },
        ] as const)),
  ];
}

function wetDryLimits(slots: Slots): Limit[] {
  const ratio = slotNumber(slots, 'wet_dry');
  if (ratio === undefined) return [];
  const upper = slotNumber(slots, 'wet_dry_most');
  const side = slots.wet_dry_bound;
  const limit = (bound: Limit['bound'], amount: number): Limit => ({
    measure: { kind: 'wet_dry' },
    bound,
    amount,
    from: 'asked',
  });
  if (upper !== undefined) return [limit('least', ratio), limit('most', upper)];
  if (side === 'least' || side === 'most') return [limit(side, ratio)];
  return [limit('least', ratio * (1 - ABOUT)), limit('most', ratio * (1 + ABOUT))];
}

function limitOf(target: Target, sure: boolean): Limit {
  if (target.nutrient === 'cost')
    return { measure: { kind: 'cost' }, bound: target.bound ?? 'most', amount: target.amount, from: 'asked' };
  const key = targetKey(target);
  if (target.unit === '%') return shareLimit(target, key);
  return {
    measure: { kind: 'nutrient', key },
    bound: targetBound(target, key),
    amount: inOwnUnit(target, key),
    ...(sure ? { evenIfScooped: true as const } : {}),
    from: 'asked',
  };
}

const SHARES = { proteinG: 'protein', carbohydrateG: 'carbohydrate', fatG: 'fat' } as const;

function shareLimit(target: Target, key: string): Limit {
  const of = SHARES[key as keyof typeof SHARES];
  if (of && target.amount <= 100) {
    const bound = target.bound ?? (of === 'fat' ? 'most' : 'least');
    return { measure: { kind: 'energy_share', of }, bound, amount: target.amount / 100, from: 'asked' };
  }
  throw new Problem(
    'bad_option',
    'A share of energy is 0 to 100 % from protein, carbohydrate or fat.',
    'Write it like "at least 30 % protein".',
  );
}

/**
 * What was said of ingredients, in grams of one mix: kept, least, most, whole scoops and packages.
 * `mixShare` is one mix's share of the batch. Throws `not_found` for what the recipe does not hold.
 */
export function foodLimitsWanted(slots: Slots, recipe: Recipe, book: Book, mixShare: number): FoodLimit[] {
  const found = new Map<string, FoodLimit>();
  const add = (limit: FoodLimit) =>
    found.set(limit.foodId, { ...found.get(limit.foodId), ...limit } as FoodLimit);
  if (typeof slots.whole_of === 'string') {
    const unit = String(slots.whole_unit ?? 'package');
    for (const food of foodsNamed(recipe, book, slots.whole_of))
      add({ foodId: food.id, ...wholeOf(food, unit, mixShare) });
  } else if (slots.whole === true) for (const limit of wholeOnes(recipe)) add(limit);
  for (const item of slotList(slots, 'ingredient_limit')) {
    const { ingredient, amount, amount_unit, bound } = item as Record<string, unknown>;
    for (const food of foodsNamed(recipe, book, String(ingredient))) {
      const massG = massOf(food, Number(amount), String(amount_unit ?? 'g')).massG * mixShare;
      add(bound === 'least' ? { foodId: food.id, leastG: massG } : { foodId: food.id, mostG: massG });
    }
  }
  for (const words of slotList(slots, 'keep').map(itemLine))
    for (const food of foodsNamed(recipe, book, words)) add({ foodId: food.id, fixed: true });
  return [...found.values()];
}

/**
 * Whole packages of a batch, shared by its mixes; scoops are counted in each mix. Throws `no_portion` when nobody has said
 * how much one holds.
 */
function wholeOf(food: Food, unit: string, mixShare: number): Pick<FoodLimit, 'wholeG' | 'package'> {
  const massG = commonPackage(food, unit)?.massG ?? massOf(food, 1, unit).massG;
  const each = unit === 'scoop' ? 1 : mixShare;
  return { wholeG: massG * each, package: { word: unit, each } };
}

function foodsNamed(recipe: Recipe, book: Book, words: string) {
  const foods = linesMeant(recipe, book, words);
  if (foods.length > 0) return foods;
  throw requireLines(recipe, book, book.foods.get(words)?.name ?? words);
}

const WHOLE_UNITS = new Set(['scoop', 'can', 'jar', 'packet', 'package', 'container', 'bag', 'stick']);

/** Lines counted in scoops or packages, with the grams of one. */
const wholeOnes = (recipe: Recipe): FoodLimit[] =>
  recipe.lines
    .filter(({ unit, amount }) => WHOLE_UNITS.has(unit) && amount.numerator > 0)
    .map((line: RecipeLine) => ({
      foodId: line.foodId,
      wholeG: line.massG / (line.amount.numerator / line.amount.denominator),
    }));
