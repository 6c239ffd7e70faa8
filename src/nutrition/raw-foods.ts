import type { Food } from './food.ts';
import type { Recipe } from './recipe.ts';

/** What a step does to heat food through. "Roasted peanuts" and "cooked oats" are ingredients, "boiling water" is none. */
const HEAT =
  /\b(?:oven|bake|baking|boil|fry|simmer|roast|grill|saute|scramble|poach|steam|cook|microwave|heat-treat)\b/i;
const NO_HEAT =
  /\b(?:no|not|never|without|don't)[ -](?:the )?(?:bake|baking|cook|cooking|oven|boil)\b|\bbaking (?:powder|soda|sheet|pan|paper|dish)\b/gi;
const TREATED = /\b(?:pasteuri[sz]ed|heat[- ]treated|cooked|boiled|baked|toasted|roasted|dried|powder)\b/i;
const RAW_MEAT = /\b(?:beef|pork|chicken|turkey|lamb|salmon|cod|fish|shrimp)\b.*\braw\b/i;
/** Their entries have no note of it. */
const WHEAT_FLOURS: ReadonlySet<string> = new Set(['bread-flour', 'self-rising-flour', 'cake-flour']);

/**
 * Foods that a recipe as written leaves raw and that are not eaten raw: egg, wheat flour, meat and fish. Common practice,
 * no source. A line that says "pasteurized" or "heat-treated" is not meant.
 */
export function rawFoods(recipe: Recipe, foods: ReadonlyMap<string, Food>): readonly Food[] {
  const { steps, kind, lines } = recipe;
  const isBaked = steps.length === 0 && /^(?:baked_bar|muffin)$/.test(kind);
  if (isBaked || steps.some(({ text }) => HEAT.test(text.replace(NO_HEAT, ' ')))) return [];
  const left = lines.filter(({ written, prep }) => !TREATED.test(`${written} ${prep ?? ''}`));
  return [...new Set(left.map(({ foodId }) => foodId))].flatMap((id) => {
    const food = foods.get(id);
    return food && isRaw(food) ? [food] : [];
  });
}

const isRaw = ({ id, note = '', name }: Food): boolean =>
  /^raw\b/i.test(note) || RAW_MEAT.test(name) || WHEAT_FLOURS.has(id);
