import { unitById } from '../units/unit.ts';
import { type IsFood, readMeasures, unglued } from './read-measures.ts';
import { CONTAINERS } from './words.ts';
import type { StatedMass } from './written-line.ts';

const ABOUT = /^(?:about|approx\.?|approximately|~)\s*/i;
const OF_WHAT = /\s+(each|per \w+|total|net)$/i;

/**
 * A mass in parentheses: "1 (15 oz) can" and "4 scoops (30 g each)" are of each, "2 cups (162 g)" and
 * "6 cups (1 lb 11 oz)" of the line. The first parenthesis that is a mass counts; one that is not stays out.
 */
export function readStatedMass(
  written: string,
  parentheses: readonly string[],
  unitId: string | undefined,
  isFood: IsFood,
): StatedMass | undefined {
  for (const inside of parentheses) {
    const said = OF_WHAT.exec(inside.trim())?.[1]?.toLowerCase();
    const massG = gramsIn(inside.trim().replace(ABOUT, '').replace(OF_WHAT, ''), isFood);
    if (massG === undefined) continue;
    return { massG, of: isOfEach(written, inside, said, unitId) ? 'each' : 'total' };
  }
  return undefined;
}

/** "6½ oz", "15-ounce", "1 lb 11 oz" in grams; undefined for anything that is not all weight. */
function gramsIn(text: string, isFood: IsFood): number | undefined {
  if (!/^[\d.½⅓⅔¼¾⅛⅜⅝⅞]/.test(text)) return undefined;
  const words = unglued(text.replace(/(?<=\d)-(?=[a-z])/gi, ' ')).split(' ');
  const { measures, rest, eachG } = readMeasures(words, isFood);
  if (measures.length === 0 || rest.length > 0 || eachG !== undefined) return undefined;
  let massG = 0;
  for (const { quantity, unitId } of measures) {
    const unit = unitById(unitId ?? '');
    if (unit?.kind !== 'mass') return undefined;
    massG += quantity.amount * unit.g;
  }
  return massG;
}

function isOfEach(written: string, inside: string, said: string | undefined, unitId = ''): boolean {
  if (said) return said === 'each' || said.startsWith('per');
  const before = written.slice(0, written.indexOf(`(${inside})`)).trim();
  const comesBeforeTheUnit = /^[\d\s/.,½⅓⅔¼¾⅛-]+$/.test(before);
  return comesBeforeTheUnit || (CONTAINERS.has(unitId) && unitId !== 'scoop');
}
