import type { AllergenList } from '../allergen-list.ts';
import type { Need } from '../allergens.ts';
import type { Food } from '../food.ts';
import type { Recipe } from '../recipe.ts';
import { formOf } from './form.ts';
import {
  makeOffer,
  type OfferBase,
  offerBase,
  recipeFoods,
  type StillThere,
  type SwapOffer,
  standsAgainst,
} from './offer.ts';
import { type Choice, type Group, groupsOf, leaveOut, mayLeaveOut, rank, swapLines } from './rank.ts';
import type { Setting } from './score.ts';
import { candidateOf, needBits, type SwapTable, swapTable } from './table.ts';
import { isMendable } from './texture.ts';

export interface SwapQuestion {
  readonly recipe: Recipe;
  readonly foods: ReadonlyMap<string, Food>;
  /** The recipes of the kitchen: what they use is on the shelf. */
  readonly recipes: ReadonlyMap<string, Recipe>;
  readonly needs: readonly Need[];
  readonly list: AllergenList;
  /** Foods of the recipe that must go, whatever the needs: "out of milk". */
  readonly without?: readonly Food[];
  /** How many offers at most, 3 unless said. */
  readonly most?: number;
}

/** An ingredient that has to go and that nothing in the food table can stand in for. */
export interface Blocked {
  readonly food: Food;
  readonly because: readonly StillThere[];
}

export interface SwapAnswer {
  /** Best first. Each has been judged whole: nothing in it speaks against the needs. */
  readonly offers: readonly SwapOffer[];
  readonly blocked: readonly Blocked[];
  /** True when the recipe has nothing to swap: it meets the needs as it is. */
  readonly nothingToSwap: boolean;
}

const KEPT_PER_GROUP = 6;
const MOST_TRIED = 40;

/**
 * Finds the best ways to make a recipe without some foods and clear of some needs, from the whole food table.
 * An offer that still holds, or may hold, what is avoided anywhere in the recipe is never returned.
 */
export function findSwaps(question: SwapQuestion): SwapAnswer {
  const { recipe, foods, needs } = question;
  const without = new Set((question.without ?? []).map((food) => food.id));
  const table = swapTable(foods);
  const against = standsAgainst(recipeFoods(recipe, foods), needs);
  const offending = new Set(against.map((found) => found.food.id));
  const groups = groupsOf(recipe, foods, (food) => without.has(food.id) || offending.has(food.id));
  if (groups.length === 0) return { offers: [], blocked: [], nothingToSwap: true };
  const setting = settingOf(recipe, foods, question.recipes);
  const bits = needBits(needs);
  const claimed = without.size > 0 ? needBits(claimsOf(recipe)) : 0;
  const choices = groups.map((group) => {
    const keeping = choicesOf(group, table, bits | claimed, setting, without);
    return keeping.length > 0 || claimed === 0 ? keeping : choicesOf(group, table, bits, setting, without);
  });
  const blocked = groups
    .filter((_, i) => choices[i]?.length === 0)
    .map(({ food }) => ({ food, because: against.filter((found) => found.food.id === food.id) }));
  if (blocked.length > 0) return { offers: [], blocked, nothingToSwap: false };
  const base = offerBase(recipe, foods, needs, question.list);
  return { offers: bestOffers(base, choices, question.most ?? 3), blocked: [], nothingToSwap: false };
}

const CLAIMS: ReadonlyMap<string, readonly Need[]> = new Map([
  ['nut-free', ['peanut', 'tree_nut']],
  ['gluten-free', ['gluten']],
  ['dairy-free', ['milk']],
  ['egg-free', ['egg']],
  ['vegan', ['animal']],
  ['vegetarian', ['meat']],
]);

/** What a recipe is tagged as: whoever is out of an ingredient does not mean to give that up. */
const claimsOf = (recipe: Recipe): Need[] => recipe.tags.flatMap((tag) => CLAIMS.get(tag) ?? []);

function choicesOf(
  group: Group,
  table: SwapTable,
  bits: number,
  setting: Setting,
  without: ReadonlySet<string>,
): Choice[] {
  const found = rank(group, table, bits, setting, without, KEPT_PER_GROUP);
  return found.length === 0 && mayLeaveOut(group) ? [leaveOut(group)] : found;
}

/** The offers of the best combinations, one choice a group, that are clear as a whole and can be mixed. */
function bestOffers(base: OfferBase, choices: readonly (readonly Choice[])[], most: number): SwapOffer[] {
  const offers: SwapOffer[] = [];
  for (const combination of combinations(choices)) {
    if (offers.length === most) break;
    const score = combination.reduce((sum, choice) => sum + choice.score, 0);
    const offer = makeOffer(
      base,
      combination.flatMap((choice) => choice.swaps),
      score,
    );
    if (offer.stillThere.length === 0 && isMendable(offer.texture, base.recipe)) offers.push(offer);
  }
  return offers;
}

/** The best of every group, then every way to change one group, then two, by score; bounded. */
function combinations(choices: readonly (readonly Choice[])[]): (readonly Choice[])[] {
  let made: { picked: readonly Choice[]; score: number }[] = [{ picked: [], score: 0 }];
  for (const options of choices) {
    made = made
      .flatMap(({ picked, score }) =>
        options.map((choice) => ({ picked: [...picked, choice], score: score + choice.score })),
      )
      .sort((a, b) => b.score - a.score)
      .slice(0, MOST_TRIED);
  }
  return made.map(({ picked }) => picked);
}

/**
 * Evaluates one replacement a person named, whatever it holds: what still stands against the needs is said in
 * `stillThere`. `undefined` when no sensible amount of it does the work.
 */
export function tryReplacement(question: SwapQuestion, replacement: Food): SwapOffer | undefined {
  const { recipe, foods } = question;
  const without = new Set((question.without ?? []).map((food) => food.id));
  const groups = groupsOf(recipe, foods, (food) => without.has(food.id));
  const to = candidateOf(replacement);
  const swaps = groups.map((group) => swapLines(group, candidateOf(group.food), to));
  if (groups.length === 0 || swaps.some((s) => s === undefined)) return undefined;
  const withReplacement = foods.has(replacement.id) ? foods : new Map(foods).set(replacement.id, replacement);
  const base = offerBase(recipe, withReplacement, question.needs, question.list);
  return makeOffer(
    base,
    swaps.flatMap((s) => s ?? []),
    0,
  );
}

/** What of a recipe and its kitchen bears on what may stand in for an ingredient. */
export function settingOf(
  recipe: Recipe,
  foods: ReadonlyMap<string, Food>,
  recipes: ReadonlyMap<string, Recipe>,
): Setting {
  const savoryForms = recipe.lines.some((line) => {
    const food = foods.get(line.foodId);
    return food !== undefined && ['meat', 'fish', 'cheese', 'sauce'].includes(formOf(food));
  });
  return {
    noBake: recipe.moistureLoss === 0,
    savory: savoryForms,
    roomStorage: recipe.storage === 'room',
    inKitchen: usedIn(recipes),
    inRecipe: new Set(recipe.lines.map((line) => line.foodId)),
    ...bitsOf(recipe, foods),
  };
}

/** What the recipe as it is holds and what nothing in it speaks against. */
function bitsOf(recipe: Recipe, foods: ReadonlyMap<string, Food>): Pick<Setting, 'clear' | 'majors'> {
  const { byId } = swapTable(foods);
  let clear = -1;
  let majors = 0;
  for (const line of recipe.lines) {
    const candidate = byId.get(line.foodId);
    clear &= candidate?.clear ?? 0;
    majors |= candidate?.majors ?? 0;
  }
  return { clear, majors };
}

const used = new WeakMap<ReadonlyMap<string, Recipe>, ReadonlySet<string>>();

function usedIn(recipes: ReadonlyMap<string, Recipe>): ReadonlySet<string> {
  const ready = used.get(recipes);
  if (ready) return ready;
  const ids = new Set([...recipes.values()].flatMap((recipe) => recipe.lines.map((line) => line.foodId)));
  used.set(recipes, ids);
  return ids;
}
