import { Problem } from '../problem.ts';
import { parseQuantity } from '../quantity/parse-quantity.ts';
import { readUnit } from '../units/unit.ts';
import { CONTAINERS } from './words.ts';
import type { StatedMass } from './written-line.ts';

const MASS = /^(?:about |approx\.? |~)?([\d.,/ ]+?)[\s-]*([a-zA-Z]+)\.?(?:\s*(each|per \w+|total|net))?$/;

/**
 * A mass in parentheses: "1 (15 oz) can" and "4 scoops (30 g each)" are of each, "2 cups (162 g)" of the line.
 * The first parenthesis that is a mass counts; one that is not stays out.
 */
export function readStatedMass(
  written: string,
  parentheses: readonly string[],
  unitId: string | undefined,
): StatedMass | undefined {
  for (const inside of parentheses) {
    const match = MASS.exec(inside.trim());
    const unit = match?.[2] ? readUnit(match[2]) : undefined;
    if (!match || unit?.kind !== 'mass') continue;
    const massG = grams(match[1] ?? '', unit.g);
    if (massG === undefined) continue;
    return { massG, of: isOfEach(written, inside, match[3], unitId) ? 'each' : 'total' };
  }
  return undefined;
}

function grams(amount: string, gramsPerUnit: number): number | undefined {
  try {
    return parseQuantity(amount).amount * gramsPerUnit;
  } catch (error) {
    if (error instanceof Problem) return undefined;
    throw error;
  }
}

function isOfEach(written: string, inside: string, said: string | undefined, unitId = ''): boolean {
  if (said) return said === 'each' || said.startsWith('per');
  const before = written.slice(0, written.indexOf(`(${inside})`)).trim();
  const comesBeforeTheUnit = /^[\d\s/.,½⅓⅔¼¾⅛-]+$/.test(before);
  return comesBeforeTheUnit || (CONTAINERS.has(unitId) && unitId !== 'scoop');
}
