import { type IsFood, readMeasures, unglued } from './read-measures.ts';
import { readStatedMass } from './stated-mass.ts';
import { tidyLine } from './tidy-line.ts';
import { BULLET, LEFT_TO_THE_COOK } from './words.ts';
import type { WrittenLine } from './written-line.ts';

export type { IsFood } from './read-measures.ts';

/**
 * Takes one ingredient line apart: "1 1/2 cups of rolled oats, toasted" is 3/2 cup, "rolled oats", "toasted".
 * The amount may also come last: "rolled oats 2 cups". Throws `bad_quantity` for an amount below zero.
 */
export function readLine(line: string, isFood: IsFood): WrittenLine {
  const written = line.trim().replace(BULLET, '');
  if (isFood(written)) return { written, measures: [], foodWords: written, leftToTheCook: false };
  const tidy = tidyLine(written, isFood);
  const parentheses = [...tidy.matchAll(/\(([^()]*)\)/g)].map((match) => match[1] ?? '');
  const bare = unglued(tidy.replace(/\([^()]*\)/g, ' '));
  const [beforeComma = '', ...afterComma] = bare.split(/\s*,(?!\d{3}\b)\s*/);
  const { measures, rest, eachG } = readMeasures(beforeComma.split(' ').filter(Boolean), isFood);
  // "3/4 cup, all-purpose flour": the food stands behind the comma.
  const named = measures.length > 0 && rest.length === 0 ? (afterComma.shift() ?? '') : rest.join(' ');
  const prep = afterComma.join(', ').trim();
  const aside = parentheses.filter((words) => words.trim() !== '');
  const stated =
    eachG === undefined ? readStatedMass(tidy, parentheses, measures[0]?.unitId, isFood) : undefined;
  return {
    written,
    measures,
    foodWords: withoutCookWords(named),
    ...(prep !== '' && { prep }),
    ...(aside.length > 0 && { aside }),
    ...(eachG !== undefined ? { stated: { massG: eachG, of: 'each' as const } } : stated && { stated }),
    leftToTheCook: measures.length === 0 && LEFT_TO_THE_COOK.test(bare),
  };
}

function withoutCookWords(words: string): string {
  return words
    .replace(LEFT_TO_THE_COOK, '')
    .replace(/\boptional\b/i, '')
    .replace(/[\s.:;-]+$/, '')
    .replace(/\s+/g, ' ')
    .trim();
}
