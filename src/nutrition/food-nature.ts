import type { Allergen } from './allergens.ts';
import type { Food } from './food.ts';

/** What can be told about a food from its kind alone, when no package has been read. */

/** Groups whose members are one ingredient, unless the name says that something was added. */
const PLAIN_GROUP =
  /fruit|vegetable|legume|bean|spice|herb|oil|fat|dairy|milk|cheese|yogurt|egg|fish|seafood|meat|poultry|beef|grain|cereal|flour|oat|nut|seed|sugar|sweet|syrup|water|leavening|baking|flavo(u)?r|extract/i;

/** Names under which makers add other things: allergens can hide in these, so a label must be read. */
const MADE_OF_SEVERAL =
  /chocolate|cand(y|ies)|granola|bars?\b|ready-to-eat|crisp|puffed|bread|bagel|muffin|tortilla|pita|wrap|cracker|pretzel|cookie|graham|cake|sauce|dressing|mayo|salsa|hummus|pesto|jerky|ham\b|deli|sausage|bacon|sliced, prepackaged|trail mix|mix(ed)?\b|spread|marshmallow|margarine|shortening|yogurt.*(vanilla|strawberry|fruit|flavou?r)|imitation|protein|powder whey|fruit variety|seasoning|broth|stock|substitute|instant, fortified, with|pasta|noodle|cocoa mix|creamer|sprinkles|chips|imitation|topping|curry|pie spice|burger|tempeh|tofu yogurt|snack/i;

/** The words a food is known by; aliases are left out, for people call many things "mix". */
const wordsOf = (food: Food): string =>
  `${food.id.replace(/[_-]/g, ' ')} | ${food.name} | ${food.source.kind === 'usda_sr28' ? food.source.description : ''}`;

const plainByFood = new WeakMap<Food, boolean>();

/** True when the food is one ingredient: nothing hides in it but what its own package may say. */
export function isPlain(food: Food): boolean {
  const known = plainByFood.get(food);
  if (known !== undefined) return known;
  const plain =
    (PLAIN_GROUP.test(food.group) || /extract|vinegar/i.test(food.name)) &&
    !MADE_OF_SEVERAL.test(wordsOf(food));
  plainByFood.set(food, plain);
  return plain;
}

/** Whole tree nuts and peanuts share lines and bins, so each is asked about for the other. */
const isNut = (food: Food): boolean =>
  food.contains.some((m) => m.allergen === 'tree_nut' || m.allergen === 'peanut');

/** Whether this allergen may be in the food although nothing says so, because no label has been read. */
export function mayHide(food: Food, allergen: Allergen): boolean {
  if (food.allergenBasis === 'label') return false;
  if (!isPlain(food)) return true;
  if (allergen === 'peanut' || allergen === 'tree_nut') return isNut(food);
  // Barley and rye are grown, milled and flaked beside wheat.
  if (allergen === 'wheat') return food.gluten === 'contains' || isUnlabelledGrain(food);
  if (allergen === 'gluten_cereal') return isUnlabelledGrain(food);
  return false;
}

/** Oats in any form: rolled, bran, flour, drink, granola. */
export const isOats = (food: Food): boolean => /\boat(s|meal)?\b/i.test(wordsOf(food));

const GRAIN =
  /\b(oats?|oatmeal|rice|corn|cornmeal|cornstarch|millet|sorghum|quinoa|buckwheat|amaranth|teff|flour)\b/i;
const NOT_GRAIN = /milk|drink|syrup|sweet corn|popcorn|almond flour|coconut flour|cooked/i;

/** A grain or flour without gluten of its own whose package is not labelled gluten-free. */
export const isUnlabelledGrain = (food: Food): boolean =>
  food.gluten === 'no_gluten_grain' &&
  (isOats(food) || (GRAIN.test(wordsOf(food)) && !NOT_GRAIN.test(wordsOf(food))));

const OIL_OF = /\b(soy(bean)?|peanut|groundnut|sesame|wheat germ|walnut|almond|hazelnut)\b/i;

/**
 * The allergen a highly refined oil was pressed from, where the food declares none: refined, bleached and
 * deodorized oil is not a major allergen (FD&C Act 201(qq)(2)), cold-pressed oil is.
 */
export function refinedOilSource(food: Food): Allergen | undefined {
  if (!/\boil\b/i.test(food.name)) return undefined;
  const source = OIL_OF.exec(food.name)?.[1]?.toLowerCase();
  if (source === undefined) return undefined;
  const allergen = sourceAllergen(source);
  return food.contains.some((m) => m.allergen === allergen) ? undefined : allergen;
}

function sourceAllergen(source: string): Allergen {
  if (source.startsWith('soy')) return 'soy';
  if (source === 'peanut' || source === 'groundnut') return 'peanut';
  if (source === 'sesame') return 'sesame';
  return source === 'wheat germ' ? 'wheat' : 'tree_nut';
}

/** Lecithin on a label: from soy it counts as soy in any role; from an unnamed source it must be asked. */
export function lecithin(food: Food): 'soy' | 'unnamed' | undefined {
  const statement = food.product?.ingredientsStatement ?? '';
  if (!/lecithin/i.test(statement)) return undefined;
  if (/soy(a|bean)?\s+lecithin|lecithin\s*\((from\s+)?soy/i.test(statement)) return 'soy';
  return /(sunflower|egg|rapeseed|canola)\s+lecithin|lecithin\s*\((from\s+)?(sunflower|egg|rapeseed|canola)/i.test(
    statement,
  )
    ? undefined
    : 'unnamed';
}
