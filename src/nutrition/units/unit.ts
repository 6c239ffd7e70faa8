import { Problem } from '../problem.ts';
import { DISHERS, type DisherId, disherTsp } from './dishers.ts';
import { FOOD_WORDS, type FoodWordId } from './food-words.ts';
import { CASED_SPELLINGS, FIXED_UNITS, type FixedUnitId, TEASPOON_ML } from './unit-table.ts';

export type UnitId = FixedUnitId | FoodWordId | DisherId;

/** A unit and what one of it is: mL, g, or only what a food's own portion says. */
export type Unit =
  | {
      readonly kind: 'volume';
      readonly id: FixedUnitId | DisherId;
      readonly ml: number;
      readonly one: string;
      readonly many: string;
    }
  | {
      readonly kind: 'mass';
      readonly id: FixedUnitId;
      readonly g: number;
      readonly one: string;
      readonly many: string;
    }
  | { readonly kind: 'food_word'; readonly id: FoodWordId; readonly one: string; readonly many: string };

const LONGEST_UNIT = 30;
const byId = new Map<string, Unit>();
const bySpelling = new Map<string, Unit>();

for (const { id, kind, size, one, many, spellings } of FIXED_UNITS) {
  add(kind === 'volume' ? { kind, id, ml: size, one, many } : { kind, id, g: size, one, many }, spellings);
}
for (const { id, many, spellings } of FOOD_WORDS) {
  add({ kind: 'food_word', id, one: id.replace('_', ' '), many }, spellings);
}
for (const { number } of DISHERS) {
  const one = `No. ${number} scoop`;
  const unit = {
    kind: 'volume',
    id: `disher_${number}`,
    ml: disherTsp(number) * TEASPOON_ML,
    one,
    many: `${one}s`,
  } as const;
  add(unit, [
    `no ${number} scoop`,
    `no ${number} disher`,
    `${number} disher`,
    `#${number} scoop`,
    `#${number} disher`,
    `number ${number} scoop`,
  ]);
}

function add(unit: Unit, spellings: readonly string[]): void {
  byId.set(unit.id, unit);
  for (const spelling of [unit.id, ...spellings]) bySpelling.set(spelling, unit);
}

/** The unit with this id; ids are ours, so an unknown one is undefined rather than a guess. */
export const unitById = (id: string): Unit | undefined => byId.get(id);

/** Every spelling that names a unit, lower case; single letters whose case matters are read by `readUnit`. */
export const unitSpellings = (): Iterable<string> => bySpelling.keys();

/**
 * Reads a unit as people write it: T / Tbs / Tbsp against t / tsp, c, #, "fl oz", "No. 16 scoop".
 * @returns undefined when it is no unit known here (it may still be a food's own word).
 * @example readUnit('Tbs.')?.id // 'tbsp'
 */
export function readUnit(written: string): Unit | undefined {
  if (written.length > LONGEST_UNIT) return undefined;
  const trimmed = written.trim();
  const cased = CASED_SPELLINGS.get(trimmed.replace(/\.$/, ''));
  if (cased) return byId.get(cased);
  const plain = trimmed.toLowerCase();
  return (
    bySpelling.get(plain) ??
    bySpelling.get(
      plain
        .replace(/\./g, '')
        .replace(/[\s-]+/g, ' ')
        .trim(),
    )
  );
}

/** As `readUnit`. @throws Problem `unknown_unit` that lists the measures a kitchen uses. */
export function requireUnit(written: string): Unit {
  const unit = readUnit(written);
  if (unit) return unit;
  throw unknownUnit(written);
}

export const unknownUnit = (written: string): Problem =>
  new Problem(
    'unknown_unit',
    `"${written.trim().slice(0, LONGEST_UNIT)}" is not a measure I know.`,
    'Write tsp, Tbsp, cup, quart, fl oz, oz, lb, g, kg, mL, or a word of the food such as scoop or stick.',
  );

/**
 * The name to show beside an amount: "cup" for up to one, "cups" above; food words the same way.
 * @example unitName(unit, 1.5) // 'cups'
 */
export function unitName(unit: Unit, amount: number): string {
  switch (unit.kind) {
    case 'mass':
      return unit.one;
    case 'volume':
    case 'food_word':
      return amount > 1 ? unit.many : unit.one;
    default:
      return unit satisfies never;
  }
}
