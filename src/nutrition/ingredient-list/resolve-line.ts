import type { MeasuredAmount } from '../certainty/range.ts';
import type { Food, Portion } from '../food.ts';
import { qualifierIn } from '../portion/find-portion.ts';
import { massOf } from '../portion/mass-of.ts';
import { Problem } from '../problem.ts';
import type { MeasuredBy } from '../recipe.ts';
import { unitById } from '../units/unit.ts';
import { type FoodFinder, findFood } from './food-finder.ts';
import { CONTAINERS } from './words.ts';
import type { WrittenLine, WrittenMeasure } from './written-line.ts';

/** A line that counts: its food and grams, and what had to be assumed, in words. */
export interface CountedLine extends MeasuredAmount {
  readonly written: string;
  /** How the grams came about: "1 cup = 81 g". */
  readonly said: string;
  readonly notes: readonly string[];
}

/** A line that does not count, and why; nothing is lost without a word. */
export interface UncountedLine {
  readonly written: string;
  readonly reason: 'left_to_the_cook' | 'unknown_food' | 'no_amount' | 'no_portion' | 'bad_amount';
  readonly message: string;
  readonly hint: string;
  /** Present when the food is known and only the amount is not. */
  readonly food?: Food;
  readonly nearest: readonly Food[];
}

export type ResolvedLine = CountedLine | UncountedLine;

/** Whether a line counts toward totals. */
export const isCounted = (line: ResolvedLine): line is CountedLine => 'massG' in line;

/** Turns a written line into grams of a food, or says why it cannot. */
export function resolveLine(line: WrittenLine, finder: FoodFinder): ResolvedLine {
  const found = findFood(finder, line.foodWords, [line.prep ?? '', ...(line.aside ?? [])].join(', '));
  if (line.leftToTheCook) return leftToTheCook(line, found?.food);
  if (!found) return unknownFood(line, finder);
  const notes = found.readAs ? [`"${line.foodWords}" read as ${found.food.name}`] : [];
  try {
    return { written: line.written, food: found.food, ...grams(line, found.food, notes) };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    const reason = error.code === 'bad_quantity' ? 'bad_amount' : noPortionReason(line);
    return {
      written: line.written,
      reason,
      ...(reason === 'no_amount'
        ? {
            message: `No amount for ${line.foodWords}: left out.`,
            hint: `Write one, like "1 tsp ${line.foodWords}".`,
          }
        : { message: error.message, hint: error.hint }),
      food: found.food,
      nearest: [],
    };
  }
}

const noPortionReason = (line: WrittenLine): 'no_amount' | 'no_portion' =>
  line.measures.length === 0 ? 'no_amount' : 'no_portion';

interface Grams {
  readonly massG: number;
  readonly measuredBy: MeasuredBy;
  readonly said: string;
  readonly notes: readonly string[];
}

function grams(line: WrittenLine, food: Food, notes: readonly string[]): Grams {
  const first = line.measures[0];
  if (!first) {
    const one = massOf(food, 1, '');
    return {
      massG: one.massG,
      measuredBy: 'counted',
      said: one.said,
      notes: [...notes, 'no amount was written, so one is counted'],
    };
  }
  if (line.stated) return statedGrams(line, food, first, notes);
  const qualifier = qualifierIn(food, `${line.foodWords} ${line.prep ?? ''}`);
  const parts = line.measures.map((measure) => ({
    measure,
    reading: massOf(food, middle(measure), measure.unitId ?? '', qualifier),
  }));
  return {
    massG: parts.reduce((sum, part) => sum + part.reading.massG, 0),
    measuredBy: measuredBy(first),
    said: parts[0]?.reading.said ?? '',
    notes: [...notes, ...rangeNotes(line)],
  };
}

/** A mass the writer stated. A drained can goes by the food's own drained portion when it has one. */
function statedGrams(line: WrittenLine, food: Food, first: WrittenMeasure, notes: readonly string[]): Grams {
  const stated = line.stated;
  if (!stated) throw new Problem('bad_quantity', 'No weight is stated.', 'Write grams, like "30 g".');
  const isDrained = /\bdrained\b/i.test(`${line.prep ?? ''} ${line.foodWords}`);
  const drained = isDrained
    ? food.portions.find((portion) => /drained/i.test(portion.qualifier ?? ''))
    : undefined;
  const eachG = drained && CONTAINERS.has(drained.unit) ? drainedG(drained, stated.massG) : stated.massG;
  const drainedNotes = isDrained
    ? [
        eachG === stated.massG
          ? 'the stated weight was counted in full; weigh it drained to be sure'
          : 'drained weight of the food table used',
      ]
    : [];
  return {
    massG: stated.of === 'each' ? middle(first) * eachG : eachG,
    measuredBy: CONTAINERS.has(first.unitId ?? '') && first.unitId !== 'scoop' ? 'label' : 'weighed',
    said: 'weight as stated',
    notes: [...notes, ...rangeNotes(line), ...drainedNotes],
  };
}

/** A can of another size than the table's holds as much less or more. */
function drainedG(drained: Portion, statedG: number): number {
  const ounces = Number(/([\d.]+)\s*oz/.exec(drained.qualifier ?? '')?.[1] ?? USUAL_CAN_OZ);
  const ratio = statedG / (ounces * OUNCE_G);
  return Math.abs(ratio - 1) < SAME_CAN ? drained.massG : drained.massG * ratio;
}

const OUNCE_G = 28.349_523_125;
/** The can of beans and fruit a shop shelf mostly holds. Common practice, no source. */
const USUAL_CAN_OZ = 15;
/** 14.5, 15 and 15.5 oz are one can of different packers. Common practice, no source. */
const SAME_CAN = 0.1;

/** The middle of "2-3"; the amount itself when only one was written. */
const middle = ({ quantity }: WrittenMeasure): number =>
  quantity.most ? (quantity.amount + quantity.most.amount) / 2 : quantity.amount;

const rangeNotes = (line: WrittenLine): string[] =>
  line.measures.flatMap((measure) =>
    measure.quantity.most
      ? [`the middle, ${Number(middle(measure).toFixed(2))}, of "${line.written}" taken`]
      : [],
  );

function measuredBy({ unitId }: WrittenMeasure): MeasuredBy {
  if (unitId === 'scoop' || unitId?.startsWith('disher_')) return 'scooped';
  const unit = unitId === undefined ? undefined : unitById(unitId);
  if (unit?.kind === 'mass') return 'weighed';
  if (unit?.kind === 'volume') return 'levelled';
  return CONTAINERS.has(unitId ?? '') ? 'label' : 'counted';
}

function leftToTheCook(line: WrittenLine, food: Food | undefined): UncountedLine {
  return {
    written: line.written,
    reason: 'left_to_the_cook',
    message: `"${line.written}" has no amount, so it is not counted.`,
    hint: 'Write an amount, like "1/4 tsp salt", to count it.',
    ...(food && { food }),
    nearest: [],
  };
}

function unknownFood(line: WrittenLine, finder: FoodFinder): UncountedLine {
  const words = line.foodWords === '' ? line.written : line.foodWords;
  const nearest = finder.nearest(words, 3);
  const names = nearest.map((food) => food.name).join(', ');
  return {
    written: line.written,
    reason: 'unknown_food',
    message: `This kitchen has no food called "${words}".`,
    hint: names === '' ? 'Write a food this kitchen has, like "rolled oats".' : `Nearest: ${names}.`,
    nearest,
  };
}
