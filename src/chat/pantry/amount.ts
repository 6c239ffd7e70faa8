import type { Food } from '../../nutrition/food.ts';
import { grouped } from '../../nutrition/measure/amount-text.ts';
import { massOf } from '../../nutrition/portion/mass-of.ts';
import { commonPackage } from '../../nutrition/portion/package-portion.ts';
import { Problem } from '../../nutrition/problem.ts';
import { readUnit } from '../../nutrition/units/unit.ts';

/** Grams of an amount as it is bought, and what had to be assumed. */
export interface BoughtMass {
  readonly massG: number;
  /** "1 jar is taken as 16 oz, check yours". */
  readonly assumed?: string;
}

/**
 * Grams of "4 jars", "50 lb" or "3" of a food as a kitchen buys it. A package nobody described is taken as the size
 * shops mostly carry, and the answer says so.
 * @throws Problem `no_portion`, `unknown_unit`, `bad_quantity`.
 */
export function boughtMass(food: Food, amount: number, unit: string): BoughtMass {
  if (!(amount >= 0)) {
    throw new Problem(
      'bad_quantity',
      'That is no amount of food.',
      'Write an amount above 0, like "4 jars".',
    );
  }
  try {
    return { massG: massOf(food, amount, unit).massG };
  } catch (error) {
    const id = readUnit(unit)?.id ?? unit;
    const common = error instanceof Problem && error.code === 'no_portion' && commonPackage(food, id);
    if (!common) throw error;
    return { massG: amount * common.massG, assumed: `1 ${id} ${common.qualifier}` };
  }
}

const LB_G = 453.592_37;
const OZ_G = 28.349_523_125;

/** Grams as a pantry reads them: "25 lb (11,340 g)", "10.6 oz (300 g)". */
export function pantryWords(massG: number): string {
  // A pound kept to the milligram is a hair below one.
  const [count, unit] = massG >= LB_G - 0.001 ? [massG / LB_G, 'lb'] : [massG / OZ_G, 'oz'];
  const tenths = Math.round(count * 10) / 10;
  return `${tenths >= 1000 ? grouped(Math.round(tenths)) : tenths} ${unit} (${grouped(Math.round(massG))} g)`;
}

/** Grams for machines, to the tenth. */
export const tenth = (massG: number): number => Math.round(massG * 10) / 10;
