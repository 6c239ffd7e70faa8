import type { Food } from '../food.ts';
import type { Recipe } from '../recipe.ts';
import { isWet, type MixPart, wetOverDry } from '../wet-dry.ts';

/** How a changed dough holds together, by grams of wet over grams of dry. */
export interface Texture {
  readonly feel: 'holds' | 'too_dry' | 'too_wet' | 'not_judged';
  readonly wetDryBefore: number | undefined;
  readonly wetDryAfter: number | undefined;
  /** About how many tablespoons of liquid bring it back: to add when too dry, to hold back when too wet. */
  readonly tablespoons: number;
}

/** Grams of a tablespoon of a watery liquid (USDA SR28 14411 water, 1 fl oz 29.6 g; two tablespoons). */
const TABLESPOON_G = 14.8;

/** A recipe that itself stands outside its range is judged against where it stands, not against the range. */
export function textureOf(before: Recipe, after: Recipe, foods: ReadonlyMap<string, Food>): Texture {
  const wetDryBefore = wetOverDry(partsOf(before, foods));
  const parts = partsOf(after, foods);
  const wetDryAfter = wetOverDry(parts);
  const base = { wetDryBefore, wetDryAfter };
  if (!before.wetDry || wetDryBefore === undefined || wetDryAfter === undefined)
    return { ...base, feel: 'not_judged', tablespoons: 0 };
  const least = Math.min(before.wetDry.least, wetDryBefore);
  const most = Math.max(before.wetDry.most, wetDryBefore);
  const dryG = parts.filter((p) => !isWet(p.food, p.role)).reduce((sum, p) => sum + p.massG, 0);
  if (wetDryAfter < least - 1e-9)
    return { ...base, feel: 'too_dry', tablespoons: spoons((least - wetDryAfter) * dryG) };
  if (wetDryAfter > most + 1e-9)
    return { ...base, feel: 'too_wet', tablespoons: spoons((wetDryAfter - most) * dryG) };
  return { ...base, feel: 'holds', tablespoons: 0 };
}

const spoons = (massG: number): number => Math.max(1, Math.ceil(massG / TABLESPOON_G));

function partsOf(recipe: Recipe, foods: ReadonlyMap<string, Food>): MixPart[] {
  return recipe.lines.flatMap((line) => {
    const food = foods.get(line.foodId);
    return food ? [{ food, role: line.role, massG: line.massG }] : [];
  });
}

/** More than about a tenth of the mix in liquid is another recipe, not a swap. */
export function isMendable(texture: Texture, recipe: Recipe): boolean {
  const massG = recipe.lines.reduce((sum, line) => sum + line.massG, 0);
  return texture.tablespoons * TABLESPOON_G <= Math.max(massG * 0.12, 2 * TABLESPOON_G);
}
