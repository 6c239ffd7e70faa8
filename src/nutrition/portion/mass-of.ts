import type { Food, Portion } from '../food.ts';
import { Problem } from '../problem.ts';
import { MOST_AMOUNT } from '../quantity/quantity.ts';
import { readUnit, type Unit, unknownUnit } from '../units/unit.ts';
import { countPortion, nearestVolumePortion, portionOf } from './find-portion.ts';
import { packagePortion, servingPortion } from './package-portion.ts';

/** Grams of an amount of a food, and by what right. */
export interface MassReading {
  readonly massG: number;
  /** The food's own portion that was used; absent for a weight, which needs none. */
  readonly portion?: Portion;
  /** How the grams came about, for people: "1 cup = 81 g". */
  readonly said: string;
}

/**
 * Grams of `amount` `unit` of a food. A weight is exact. A volume becomes grams only through one of the food's own
 * volume portions, the nearest in size, by the exact ratio of the two measures; there is no general density.
 * @param unit a unit id or any spelling of it, or the food's own word ("medium", "stick"); '' counts whole pieces.
 * @param qualifier how it is cut or packed ("sliced"); the nearest other portion serves when there is none such.
 * @throws Problem `no_portion` when the food has no portion to go by, `unknown_unit`, `bad_quantity`.
 * @example massOf(rolledOats, 2, 'cup').massG // 162, from "1 cup = 81 g"
 */
export function massOf(food: Food, amount: number, unit: string, qualifier?: string): MassReading {
  if (!(amount >= 0 && amount <= MOST_AMOUNT)) {
    throw new Problem(
      'bad_quantity',
      `${amount} is not an amount of ${food.name}.`,
      'Write a number above 0.',
    );
  }
  const known = unit.trim() === '' ? undefined : readUnit(unit);
  if (!known) return byWord(food, amount, unit.trim().toLowerCase(), qualifier, undefined);
  switch (known.kind) {
    case 'mass':
      return {
        massG: amount * known.g,
        said: known.id === 'g' ? 'weighed' : `1 ${known.one} = ${grams(known.g)}`,
      };
    case 'volume':
      return byVolume(food, amount, known, qualifier);
    case 'food_word':
      return byWord(food, amount, known.id, qualifier, known);
    default:
      return known satisfies never;
  }
}

function byVolume(
  food: Food,
  amount: number,
  unit: Unit & { kind: 'volume' },
  qualifier?: string,
): MassReading {
  const near = nearestVolumePortion(food, unit, qualifier);
  if (!near) throw noPortion(food, unit.one);
  const massG = (amount * near.portion.massG * unit.ml) / near.unit.ml;
  return { massG, portion: near.portion, said: sayPortion(near.portion, near.unit.one) };
}

function byWord(
  food: Food,
  amount: number,
  word: string,
  qualifier: string | undefined,
  unit: Unit | undefined,
): MassReading {
  const portion =
    word === '' || word === 'each'
      ? countPortion(food)
      : (portionOf(food, word, qualifier) ?? servingPortion(food, word) ?? packagePortion(food, word));
  if (portion)
    return { massG: amount * portion.massG, portion, said: sayPortion(portion, portionWord(portion)) };
  if (word === 'piece' || namesTheFood(food, word)) {
    const one = countPortion(food);
    if (one) return { massG: amount * one.massG, portion: one, said: sayPortion(one, portionWord(one)) };
  }
  if (unit || word === '' || namesTheFood(food, word)) throw noPortion(food, unit?.one ?? (word || 'piece'));
  throw unknownUnit(word);
}

/** "3 bananas" of banana: the food's own name is a word for one piece of it. */
function namesTheFood(food: Food, word: string): boolean {
  const stem = word.replace(/e?s$/, '');
  return stem.length > 2 && [food.name, ...food.aliases].some((name) => name.toLowerCase().includes(stem));
}

/** Unit of a portion in words: "No. 16 scoop" or the food's own "stick". */
const portionWord = (portion: Portion): string => readUnit(portion.unit)?.one ?? portion.unit;

const sayPortion = (portion: Portion, word: string): string =>
  `1 ${word}${portion.qualifier ? `, ${portion.qualifier},` : ''} = ${grams(portion.massG)}`;

const grams = (massG: number): string => `${Number(massG.toPrecision(4))} g`;

const noPortion = (food: Food, unit: string): Problem =>
  new Problem(
    'no_portion',
    `I do not know what one ${unit} of ${food.name} weighs.`,
    'Weigh it and write grams, for example "120 g".',
  );
