import type { Food, Portion } from '../food.ts';
import { readUnit, type Unit, unitById } from '../units/unit.ts';

/** Portions that stand for "one of it", best first, when a count is given without a size word. */
const COUNT_WORDS = ['each', 'medium', 'fruit', 'piece', 'large', 'small', 'slice', 'packet'] as const;
/** US recipes mean a large egg unless they say otherwise. Common practice, no source. */
const COUNT_WORDS_EGG = ['each', 'large', 'medium', 'extra_large', 'jumbo', 'small'] as const;

/** The portion with this unit, preferring the qualifier asked for, then one without any. */
export function portionOf(food: Food, unitId: string, qualifier?: string): Portion | undefined {
  const same = food.portions.filter((portion) => sameUnit(portion.unit, unitId));
  if (qualifier) {
    const asked = qualifier.toLowerCase();
    const found = same.find((portion) => portion.qualifier?.toLowerCase().includes(asked));
    if (found) return found;
  }
  return same.find((portion) => portion.qualifier === undefined) ?? same[0];
}

/** What one whole piece of this food weighs, if any portion says: an egg is a large egg, a banana a medium one. */
export function countPortion(food: Food): Portion | undefined {
  const isEgg = /^egg\b/i.test(food.name) || food.id === 'egg';
  for (const word of isEgg ? COUNT_WORDS_EGG : COUNT_WORDS) {
    const portion = portionOf(food, word);
    if (portion) return portion;
  }
  const words = food.name.toLowerCase();
  return food.portions.find((portion) => words.includes(portion.unit.toLowerCase()));
}

/**
 * The food's own volume portion nearest in size to `unit` (a measured cup says more about 3/4 cup than a
 * tablespoon does), or the one with the qualifier asked for.
 */
export function nearestVolumePortion(
  food: Food,
  unit: Unit & { kind: 'volume' },
  qualifier?: string,
): { readonly portion: Portion; readonly unit: Unit & { kind: 'volume' } } | undefined {
  let best: { portion: Portion; unit: Unit & { kind: 'volume' }; distance: number } | undefined;
  for (const portion of food.portions) {
    const own = unitById(portion.unit) ?? readUnit(portion.unit);
    if (own?.kind !== 'volume' || !(portion.massG > 0)) continue;
    const distance = Math.abs(Math.log(own.ml / unit.ml)) + qualifierDistance(portion, qualifier);
    if (!best || distance < best.distance) best = { portion, unit: own, distance };
  }
  return best;
}

/** Keeps a portion of another preparation behind every portion of the right one. */
function qualifierDistance(portion: Portion, qualifier: string | undefined): number {
  if (qualifier && portion.qualifier?.toLowerCase().includes(qualifier.toLowerCase())) return 0;
  if (qualifier) return portion.qualifier === undefined ? 100 : 200;
  return portion.qualifier === undefined ? 0 : 0.5;
}

function sameUnit(portionUnit: string, unitId: string): boolean {
  if (portionUnit === unitId) return true;
  return readUnit(portionUnit)?.id === unitId || singular(portionUnit) === singular(unitId);
}

const singular = (word: string): string =>
  word
    .trim()
    .toLowerCase()
    .replace(/(?<=ch|sh|x|ss|o)es$|(?<=[^s])s$/, '');

/**
 * The way of cutting or packing among the food's portions that the writer named: "mashed", "packed", "sliced" of a
 * food measured in "slices".
 * @example qualifierIn(apple, 'peeled, sliced') // 'slices'
 */
export function qualifierIn(food: Food, words: string): string | undefined {
  const said = new Set(
    words
      .toLowerCase()
      .split(/[^a-z]+/)
      .map(stemOf),
  );
  return food.portions.find(({ qualifier }) =>
    qualifier
      ?.toLowerCase()
      .split(/[\s,]+/)
      .some((word) => word.length > 3 && said.has(stemOf(word))),
  )?.qualifier;
}

const stemOf = (word: string): string => (word.length > 4 ? word.replace(/(?:es|ed|s|d|e)$/, '') : word);
