import { meets, type NutrientRange } from '../../../nutrition/certainty/range.ts';
import type { NutrientKey } from '../../../nutrition/nutrients.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Target } from '../../slots.ts';
import type { Asking } from './answer-figures.ts';
import { amountWords, nutrientName, nutrientOf, nutrientUnit, rangeWords } from './figure-words.ts';
import { figuresOf } from './figures.ts';
import { slotTargets } from './slot-values.ts';

/** How the figures stand to what was wanted, in words and for machines. */
export interface TargetLines {
  readonly lines: readonly string[];
  readonly data: readonly Record<string, unknown>[];
}

/** Of these, people want at most so much when they do not say which way. */
const WANTED_LOW: ReadonlySet<NutrientKey> = new Set([
  'energyKcal',
  'fatG',
  'saturatedFatG',
  'sugarsG',
  'addedSugarsG',
  'sodiumMg',
  'cholesterolMg',
]);

/** The nutrient a target is about. Throws `bad_option` for a word that names none. */
export function targetKey(target: Target): NutrientKey {
  if (target.amount < 0)
    throw new Problem(
      'bad_quantity',
      `${target.amount} ${target.unit} ${target.nutrient} is below zero.`,
      `Write an amount from 0, like "at least 20 g protein".`,
    );
  const key = nutrientOf(target.nutrient);
  if (key) return key;
  throw new Problem(
    'bad_option',
    `There are no figures for "${target.nutrient}".`,
    'Ask for protein, carbohydrate, fat, fiber, sugars, sodium or another nutrient of the label.',
  );
}

/** Which way a target is meant: as said, else as people want that nutrient. */
export const targetBound = (target: Target, key: NutrientKey): 'least' | 'most' =>
  target.bound ?? (WANTED_LOW.has(key) ? 'most' : 'least');

/** One line a target: whether it holds, and whether only on the scale. Targets on what is not shown are left out. */
export function targetLines(asking: Asking): TargetLines {
  const judged = slotTargets(asking.slots).flatMap((target) => judge(target, asking) ?? []);
  return { lines: judged.map((one) => one.line), data: judged.map((one) => one.data) };
}

function judge(target: Target, asking: Asking): { line: string; data: Record<string, unknown> } | undefined {
  const key = targetKey(target);
  if (key === 'energyKcal' && !asking.energyShown) return undefined;
  const [figure] = figuresOf(asking.subject, asking.basis, [key]);
  const bound = targetBound(target, key);
  const amount = inOwnUnit(target, key);
  const wanted = `${bound === 'least' ? 'at least' : 'at most'} ${amountWords(amount, key)} ${nutrientName(key)}`;
  const data = { nutrient: nutrientName(key), bound, amount };
  if (!figure?.byCup || !figure.weighed) {
    return { line: `${wanted}: not known.`, data: { ...data, byCup: 'not_known', weighed: 'not_known' } };
  }
  const byCup = meets(figure.byCup, bound, amount);
  const weighed = meets(figure.weighed, bound, amount);
  const line = `${capital(wanted)}: ${verdict(figure.byCup, figure.weighed, byCup, weighed, key)}`;
  return { line, data: { ...data, byCup, weighed } };
}

type Verdict = ReturnType<typeof meets>;

function verdict(
  byCup: NutrientRange,
  weighed: NutrientRange,
  cupSays: Verdict,
  scaleSays: Verdict,
  key: NutrientKey,
): string {
  const cup = `${rangeWords(byCup, key)} by cup and spoon`;
  const scale = `${rangeWords(weighed, key)} weighed`;
  if (cupSays === 'yes') return `yes, ${cup}.`;
  if (cupSays === 'no' && scaleSays !== 'yes') return `no, ${cup}.`;
  if (scaleSays === 'yes') return `yes if weighed (${scale}); ${cup} may miss it.`;
  return scaleSays === 'no' ? `not if weighed (${scale}); ${cup}.` : `too close to call: ${cup}, ${scale}.`;
}

/** A target said in grams for a nutrient told in mg, and the other way. */
export function inOwnUnit(target: Target, key: NutrientKey): number {
  const said = target.unit.toLowerCase().replace(/^(?:ug|µg)$/, 'mcg');
  const own = nutrientUnit(key);
  const inG: Record<string, number> = { g: 1, mg: 1e-3, mcg: 1e-6 };
  const from = inG[said];
  const to = inG[own];
  return from !== undefined && to !== undefined && said !== own
    ? Number(((target.amount * from) / to).toPrecision(12))
    : target.amount;
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
