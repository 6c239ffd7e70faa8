import type { Food, Portion } from '../food.ts';

const PACKAGE_WORDS = new Set([
  'jar',
  'can',
  'bottle',
  'bag',
  'box',
  'container',
  'carton',
  'package',
  'case',
]);

/** Words for the same kind of package. */
const OTHER_WORDS: Readonly<Record<string, string>> = { container: 'container|tub', can: 'can|tin' };

/**
 * One package as it is bought, read from its price: "16 oz jar" is one jar; of "12 x 16 oz jar" one jar is a
 * twelfth of the case. A package is only meant when its own word is said.
 */
export function packagePortion(food: Food, unitId: string): Portion | undefined {
  const price = food.price;
  if (!price || !PACKAGE_WORDS.has(unitId) || !(price.packageG > 0)) return undefined;
  const inCase = /^\s*(\d{1,4})\s*[x×]\s/.exec(price.packageName);
  const count = Number(inCase?.[1] ?? 1);
  if (unitId === 'case') return inCase ? { unit: 'case', massG: price.packageG } : undefined;
  const words = OTHER_WORDS[unitId] ?? unitId;
  const named = new RegExp(`\\b(?:${words})s?\\b`, 'i').test(price.packageName);
  if (!named && unitId !== 'package') return undefined;
  return { unit: unitId, massG: price.packageG / Math.max(count, 1) };
}

/** One serving as the label prints it; also one scoop when the serving is named in scoops ("2 scoops (40 g)"). */
export function servingPortion(food: Food, unitId: string): Portion | undefined {
  const label = food.product;
  if (!label || !(label.servingG > 0)) return undefined;
  if (unitId === 'serving') return { unit: 'serving', massG: label.servingG };
  const named = new RegExp(`(?:(\\d+(?:\\.\\d+)?)\\s*)?\\b${unitId}s?\\b`, 'i').exec(label.servingName);
  if (!named || unitId !== 'scoop') return undefined;
  return { unit: 'scoop', massG: label.servingG / Number(named[1] ?? 1) };
}

interface CommonPackage {
  readonly unit: string;
  readonly foods: RegExp;
  readonly portion: Portion;
}

/**
 * Packages of the size shops mostly carry, for a food whose own package is not on file. The answer says what was
 * taken. Common practice, no source.
 */
const COMMON_PACKAGES: readonly CommonPackage[] = [
  {
    unit: 'jar',
    foods: /\bbutter\b|\bhoney\b|\bjam\b|\btahini\b/i,
    portion: { unit: 'jar', qualifier: 'is taken as 16 oz, check yours', massG: 453.592_37 },
  },
  {
    unit: 'can',
    foods: /beans?|chickpeas?|pumpkin/i,
    portion: { unit: 'can', qualifier: 'is taken as 15 oz, check yours', massG: 425.242_846_875 },
  },
];

/** The usual package of such a food, marked as an assumption in its qualifier. */
export const commonPackage = (food: Food, unitId: string): Portion | undefined =>
  COMMON_PACKAGES.find((row) => row.unit === unitId && row.foods.test(food.name))?.portion;
