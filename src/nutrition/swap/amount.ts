import type { Food, Role } from '../food.ts';
import type { NutrientKey } from '../nutrients.ts';

/** What a swap keeps of the ingredient it replaces. */
export type Kept = 'mass' | 'volume' | 'water' | 'protein' | 'sugars' | 'fat';

export interface MatchedAmount {
  readonly massG: number;
  readonly keeps: Kept;
  /** The kept quantity after over before; 1 is exact. */
  readonly ratio: number;
}

/** How far `ratio` may be from 1, by what is kept. Binders and liquids give way a little to fat and water. */
export const KEPT_WITHIN: Readonly<Record<Kept, number>> = {
  mass: 0.16,
  volume: 0.16,
  water: 0.02,
  protein: 0.01,
  sugars: 0.01,
  fat: 0.01,
};

/** Grams in one US cup of a food, from its own measures; `undefined` when it has none by volume. */
export function cupG(food: Food): number | undefined {
  const perCup: readonly (readonly [string, number])[] = [
    ['cup', 1],
    ['tbsp', 16],
    ['floz', 8],
    ['tsp', 48],
  ];
  for (const [unit, times] of perCup) {
    const found = food.portions.filter((portion) => portion.unit === unit);
    const portion = found.find((p) => p.qualifier === undefined) ?? found[0];
    if (portion) return portion.massG * times;
  }
  return undefined;
}

const clamp = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/**
 * Grams of `to` that do the work `massG` of `from` does in this role, or `undefined` when no sensible amount does.
 * Binder by mass, leaning to equal fat; liquid by volume, leaning to equal water; protein by protein (a spoonable one by mass when that is too far); sweetener by
 * sugars; fat by fat; dry base by mass; crunch and color by volume unless a cup weighs very differently.
 * @example matchAmount(milk, 122, soymilk, 'liquid') // { massG: 121.5, keeps: 'volume', ratio: 1 }
 */
export function matchAmount(from: Food, massG: number, to: Food, role: Role): MatchedAmount | undefined {
  switch (role) {
    case 'binder':
      return leaning(massG, 'mass', ratioOf(from, to, 'fatG', 15));
    case 'liquid':
      return liquid(from, massG, to);
    case 'protein':
      return protein(from, massG, to);
    case 'sweetener':
      return exactly(from, massG, to, 'sugarsG', 'sugars', 5);
    case 'fat':
      return exactly(from, massG, to, 'fatG', 'fat', 20);
    case 'crunch':
    case 'color':
      return byVolume(from, massG, to);
    case 'dry_base':
    case 'leavening':
    case 'flavor':
      return { massG, keeps: 'mass', ratio: 1 };
    default:
      return role satisfies never;
  }
}

/** From over to of a nutrient, where both have at least `least` per 100 g; else 1, which changes nothing. */
function ratioOf(from: Food, to: Food, key: NutrientKey, least: number): number {
  const before = from.per100g[key] ?? 0;
  const after = to.per100g[key] ?? 0;
  return before >= least && after >= least ? before / after : 1;
}

/** Up to 15 % either way towards the wish; a difference under 10 % is not worth an odd measure. */
function leaning(massG: number, keeps: Kept, wish: number): MatchedAmount {
  const ratio = Math.abs(wish - 1) < 0.1 ? 1 : clamp(wish, 0.85, 1.15);
  return { massG: massG * ratio, keeps, ratio };
}

function liquid(from: Food, massG: number, to: Food): MatchedAmount {
  const fromCupG = cupG(from);
  const toCupG = cupG(to);
  if (fromCupG === undefined || toCupG === undefined) return leaning(massG, 'mass', 1);
  const sameVolumeG = (massG / fromCupG) * toCupG;
  const waterBefore = massG * (from.per100g.waterG ?? 0);
  const waterAfter = sameVolumeG * (to.per100g.waterG ?? 0);
  const wish = waterBefore > 0 && waterAfter > 0 ? waterBefore / waterAfter : 1;
  return leaning(sameVolumeG, 'volume', wish);
}

/** Equal grams of a nutrient; beyond half or double the mass the mix would not be the same mix. */
function exactly(
  from: Food,
  massG: number,
  to: Food,
  key: NutrientKey,
  keeps: Kept,
  least: number,
): MatchedAmount | undefined {
  const before = from.per100g[key];
  const after = to.per100g[key];
  if (before === undefined || after === undefined) return undefined;
  if (before < least) return { massG, keeps: 'mass', ratio: 1 };
  if (after < least) return undefined;
  const times = before / after;
  return times < 0.5 || times > 2 ? undefined : { massG: massG * times, keeps, ratio: 1 };
}

/** Protein by protein; a spoonable food that would need half as much again keeps its mass instead. */
function protein(from: Food, massG: number, to: Food): MatchedAmount | undefined {
  const matched = exactly(from, massG, to, 'proteinG', 'protein', 5);
  if ((from.per100g.proteinG ?? 0) >= 45) return matched;
  const times = matched ? matched.massG / massG : 0;
  if (times >= 2 / 3 && times <= 1.5) return matched;
  return (to.per100g.proteinG ?? 0) >= 3 ? { massG, keeps: 'mass', ratio: 1 } : undefined;
}

function byVolume(from: Food, massG: number, to: Food): MatchedAmount {
  const fromCupG = cupG(from);
  const toCupG = cupG(to);
  if (fromCupG === undefined || toCupG === undefined) return { massG, keeps: 'mass', ratio: 1 };
  const times = toCupG / fromCupG;
  // Leaves beside a frozen block: a cup of one is not the work of a cup of the other.
  if (times < 0.55 || times > 1.8) return { massG, keeps: 'mass', ratio: 1 };
  return { massG: massG * times, keeps: 'volume', ratio: 1 };
}
