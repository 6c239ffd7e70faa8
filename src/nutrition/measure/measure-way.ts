import type { Food } from '../food.ts';
import { countPortion, nearestVolumePortion } from '../portion/find-portion.ts';
import { massOf } from '../portion/mass-of.ts';
import { readUnit, type Unit } from '../units/unit.ts';
import { TEASPOON_ML } from '../units/unit-table.ts';

/** One way a food can be measured at the bench, with what one step of it weighs. */
export type MeasureWay =
  | { readonly kind: 'spoons'; readonly gPerTsp: number }
  | { readonly kind: 'metric_volume'; readonly gPerMl: number }
  | { readonly kind: 'ounces' }
  | { readonly kind: 'grams' }
  | {
      readonly kind: 'counted';
      readonly gEach: number;
      readonly one: string;
      readonly many: string;
      /** Smallest share a person can take: a whole egg, half a scoop. */
      readonly step: number;
      /** Cracked and beaten when a share is needed. */
      readonly egg: boolean;
    };

/**
 * The ways to measure a food, the one it was written in first. Grams always stand last: they never fail.
 * @param unit the unit the recipe uses, as id or spelling; absent picks what the food's portions allow.
 */
export function measureWays(food: Food, unit?: string, qualifier?: string): readonly MeasureWay[] {
  const known = unit === undefined ? undefined : readUnit(unit);
  if (known?.kind === 'mass')
    return [/^(?:lb|oz|label_oz)$/.test(known.id) ? { kind: 'ounces' } : GRAMS, GRAMS];
  const spoons = spoonWay(food, known, qualifier);
  if (known?.kind === 'volume') {
    const metric = known.id === 'ml' || known.id === 'l' || known.id === 'dl';
    if (spoons && metric) return [{ kind: 'metric_volume', gPerMl: spoons.gPerTsp / TEASPOON_ML }, GRAMS];
    return spoons ? [spoons, GRAMS] : [GRAMS];
  }
  const counted = unit === undefined && spoons ? undefined : countedWay(food, unit, known, qualifier);
  return [counted, spoons, GRAMS].filter((way) => way !== undefined);
}

const GRAMS: MeasureWay = { kind: 'grams' };

function spoonWay(
  food: Food,
  unit: Unit | undefined,
  qualifier?: string,
): { kind: 'spoons'; gPerTsp: number } | undefined {
  const size = unit?.kind === 'volume' ? unit : readUnit('cup');
  const near = size?.kind === 'volume' ? nearestVolumePortion(food, size, qualifier) : undefined;
  return near && { kind: 'spoons', gPerTsp: (near.portion.massG * TEASPOON_ML) / near.unit.ml };
}

/** Foods that come in shells or shapes a knife can halve but a recipe should not thirds. */
const HALVES =
  /^(?:scoop|stick|medium|large|small|extra_large|fruit|each|piece|can|jar|packet|container|slice)$/;

function countedWay(
  food: Food,
  written: string | undefined,
  unit: Unit | undefined,
  qualifier?: string,
): MeasureWay | undefined {
  const one = written === undefined ? undefined : massOf(food, 1, written, qualifier);
  const portion = one?.portion ?? countPortion(food);
  if (!portion) return undefined;
  const egg = /\begg/i.test(food.name) && unit?.id !== 'scoop';
  const word = countWord(food, unit, portion.unit);
  return {
    kind: 'counted',
    gEach: portion.massG,
    one: word,
    many: plural(word),
    step: !egg && HALVES.test(unit?.id ?? portion.unit) ? 0.5 : 1,
    egg,
  };
}

/** "3 large" reads on as the ingredient's name follows; a bare count needs no word at all. */
function countWord(food: Food, unit: Unit | undefined, portionUnit: string): string {
  const word = unit && unit.id !== 'each' ? unit.one : portionUnit;
  return word === 'each' || word === 'fruit' ? (food.name.split(',')[0] ?? 'whole') : word.replace('_', ' ');
}

const SIZES = new Set(['small', 'medium', 'large', 'extra large', 'jumbo', 'whole']);
const plural = (word: string): string =>
  SIZES.has(word) || word.endsWith('s') ? word : (readUnit(word)?.many ?? `${word}s`);
