import type { AllergenList } from '../allergen-list.ts';
import type { Allergen, Need } from '../allergens.ts';
import { type AllergenReport, type AllergenStatus, allergensOf } from '../allergens-of.ts';
import { type Judgement, judge } from '../conflict.ts';
import type { Food, Role } from '../food.ts';
import type { Recipe, RecipeLine, StorageClass } from '../recipe.ts';
import { type PieceTotals, perPiece, recipeAmounts, recipeTotals } from '../recipe-totals.ts';
import type { Kept } from './amount.ts';
import { type Texture, textureOf } from './texture.ts';

/** One recipe line changed. `to` is absent when an optional ingredient is left out. */
export interface LineSwap {
  readonly lineIndex: number;
  readonly role: Role;
  readonly from: Food;
  readonly to?: Food;
  readonly massBeforeG: number;
  readonly massAfterG: number;
  readonly keeps?: Kept;
  /** The kept quantity after over before. */
  readonly ratio?: number;
  readonly sameForm: boolean;
}

/** Something that still stands between the changed recipe and a need. */
export interface StillThere {
  readonly food: Food;
  readonly need: Need;
  readonly judgement: Judgement;
}

/** A changed recipe with everything that changed with it. Figures are per piece of the recipe's own yield. */
export interface SwapOffer {
  readonly swaps: readonly LineSwap[];
  readonly recipe: Recipe;
  readonly score: number;
  readonly before: PieceTotals;
  readonly after: PieceTotals;
  readonly allergensBefore: AllergenReport;
  readonly allergensAfter: AllergenReport;
  /** Allergens the recipe contains now and did not before; advisory ones are in `advisoryGained`. */
  readonly gained: readonly Allergen[];
  /** Allergens the recipe contained and that nothing names now; one that a label still advises of is in `advisoryStill`. */
  readonly lost: readonly Allergen[];
  /** Allergens the recipe contained and now may contain, by a label. */
  readonly advisoryStill: readonly Allergen[];
  /** Allergens of which nothing is known now, because a label has to be read first. */
  readonly unreadGained: readonly Allergen[];
  readonly advisoryGained: readonly Allergen[];
  readonly centsBefore: number | undefined;
  readonly centsAfter: number | undefined;
  readonly storageBefore: StorageClass;
  readonly storageAfter: StorageClass;
  readonly texture: Texture;
  /** Empty when nothing in the whole changed recipe speaks against the needs. */
  readonly stillThere: readonly StillThere[];
}

/** What stays the same while swaps of one recipe are compared. */
export interface OfferBase {
  readonly recipe: Recipe;
  readonly foods: ReadonlyMap<string, Food>;
  readonly needs: readonly Need[];
  readonly list: AllergenList;
  readonly before: PieceTotals;
  readonly allergensBefore: AllergenReport;
  readonly centsBefore: number | undefined;
}

export function offerBase(
  recipe: Recipe,
  foods: ReadonlyMap<string, Food>,
  needs: readonly Need[],
  list: AllergenList,
): OfferBase {
  return {
    recipe,
    foods,
    needs,
    list,
    before: perPiece(recipeTotals(recipe, foods)),
    allergensBefore: allergensOf(recipeFoods(recipe, foods), list),
    centsBefore: centsPerPiece(recipe, foods),
  };
}

/** The foods of a recipe, one a line. Throws `unknown_food` for a line whose food is missing. */
export const recipeFoods = (recipe: Recipe, foods: ReadonlyMap<string, Food>): Food[] =>
  recipeAmounts(recipe, foods).map((amount) => amount.food);

/** Everything in a recipe that speaks against the needs, or has to be asked first. */
export function standsAgainst(foods: readonly Food[], needs: readonly Need[]): StillThere[] {
  return foods.flatMap((food) =>
    needs.flatMap((need) => {
      const judgement = judge(food, need);
      return judgement.verdict === 'clear_by_label' ? [] : [{ food, need, judgement }];
    }),
  );
}

/** Recomputes the whole recipe with some lines changed. */
export function makeOffer(base: OfferBase, swaps: readonly LineSwap[], score: number): SwapOffer {
  const recipe = changed(base.recipe, swaps);
  const foods = recipeFoods(recipe, base.foods);
  const allergensAfter = allergensOf(foods, base.list);
  const had = statuses(base.allergensBefore, 'contains');
  const has = statuses(allergensAfter, 'contains');
  const warned = statuses(base.allergensBefore, 'advisory');
  const warns = statuses(allergensAfter, 'advisory');
  const storageAfter = storageOf(base.recipe, swaps);
  return {
    swaps,
    recipe: { ...recipe, storage: storageAfter },
    score,
    before: base.before,
    after: perPiece(recipeTotals(recipe, base.foods)),
    allergensBefore: base.allergensBefore,
    allergensAfter,
    gained: has.filter((a) => !had.includes(a)),
    lost: had.filter((a) => statuses(allergensAfter, 'not_listed').includes(a)),
    advisoryStill: had.filter((a) => warns.includes(a)),
    advisoryGained: warns.filter((a) => !warned.includes(a) && !had.includes(a)),
    unreadGained: statuses(allergensAfter, 'not_known').filter(
      (a) => !statuses(base.allergensBefore, 'not_known').includes(a),
    ),
    centsBefore: base.centsBefore,
    centsAfter: centsPerPiece(recipe, base.foods),
    storageBefore: base.recipe.storage,
    storageAfter,
    texture: textureOf(base.recipe, recipe, base.foods),
    stillThere: standsAgainst(foods, base.needs),
  };
}

const statuses = (report: AllergenReport, status: AllergenStatus): Allergen[] =>
  report.findings.filter((f) => f.status === status).map((f) => f.allergen);

function changed(recipe: Recipe, swaps: readonly LineSwap[]): Recipe {
  const byLine = new Map(swaps.map((swap) => [swap.lineIndex, swap]));
  const lines = recipe.lines.flatMap((line, index): RecipeLine[] => {
    const swap = byLine.get(index);
    if (!swap) return [line];
    return swap.to ? [changedLine(line, swap.to, swap.massAfterG)] : [];
  });
  return { ...recipe, lines };
}

/** The line by weight, to a tenth of a gram: the measure of the old food says nothing about the new one. */
function changedLine(line: RecipeLine, to: Food, massG: number): RecipeLine {
  const tenths = Math.max(1, Math.round(massG * 10));
  const { prep: _prep, tolerance: _tolerance, ...kept } = line;
  return {
    ...kept,
    foodId: to.id,
    amount: { numerator: tenths, denominator: 10 },
    unit: 'g',
    written: `${tenths / 10} g`,
    massG: tenths / 10,
    measuredBy: 'weighed',
  };
}

/** A cold ingredient makes the piece a cold one; taking milk out never by itself makes it keep at room temperature. */
function storageOf(recipe: Recipe, swaps: readonly LineSwap[]): StorageClass {
  const bringsCold = swaps.some((swap) => swap.to?.storage === 'cold' || isFreshlyWet(swap));
  return recipe.storage === 'room' && bringsCold ? 'refrigerated' : recipe.storage;
}

const isFreshlyWet = (swap: LineSwap): boolean =>
  swap.to !== undefined && (swap.to.per100g.waterG ?? 0) >= 50 && (swap.from.per100g.waterG ?? 0) < 50;

/** Ingredient cost of a piece in cents, not rounded; `undefined` when any ingredient has no price. */
export function centsPerPiece(recipe: Recipe, foods: ReadonlyMap<string, Food>): number | undefined {
  let cents = 0;
  for (const line of recipe.lines) {
    const price = foods.get(line.foodId)?.price;
    if (!price || price.packageG <= 0) return undefined;
    cents += (line.massG / price.packageG) * price.priceCents;
  }
  return cents / recipe.yieldPieces;
}
