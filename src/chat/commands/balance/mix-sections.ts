import type { BalancedMix } from '../../../nutrition/balance/balance.ts';
import { reached } from '../../../nutrition/balance/reached.ts';
import { type Mover, sensitivity } from '../../../nutrition/balance/sensitivity.ts';
import type { Book } from '../../../nutrition/book.ts';
import { LINE_TOLERANCE, measureBy } from '../../../nutrition/measure/kitchen-measure.ts';
import type { NutrientKey } from '../../../nutrition/nutrients.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { perPiece, recipeTotals } from '../../../nutrition/recipe-totals.ts';
import { centsPerPiece } from '../../../nutrition/swap/offer.ts';
import type { Section } from '../../answer.ts';
import { amountWords, figure, nutrientName } from '../macros/figure-words.ts';
import { gramsText } from '../scale/batch-words.ts';

/** One line of the mix, before and after, both as measured. */
export interface ChangedLine {
  readonly foodId: string;
  readonly name: string;
  readonly was: string;
  readonly now: string;
  readonly wasG: number;
  readonly nowG: number;
  readonly changed: boolean;
}

/** The lines of a mix as measured, what changed first. */
export function changedLines({ mix, measures, grams }: BalancedMix): ChangedLine[] {
  const lines = mix.lines.map(({ food, ways, baseG }, at): ChangedLine => {
    const was = measureBy(ways, baseG, LINE_TOLERANCE);
    const nowG = grams[at] ?? 0;
    const now = measures[at]?.text ?? 'none';
    const changed = now !== was.text && Math.abs(nowG / baseG - 1) > 0.01;
    return { foodId: food.id, name: food.name, was: was.text, now, wasG: baseG, nowG, changed };
  });
  return [...lines.filter(({ changed }) => changed), ...lines.filter(({ changed }) => !changed)];
}

/** The whole mix to take, what changed at the top. */
export function amountsTable(lines: readonly ChangedLine[], heading: string): Section {
  return {
    kind: 'table',
    heading,
    columns: [
      { name: 'Ingredient', align: 'left' },
      { name: 'Was', align: 'left' },
      { name: 'Now', align: 'left' },
      { name: 'Grams', align: 'right' },
    ],
    rows: lines.map(({ name, was, now, nowG, changed }) => [
      name,
      changed ? was : 'same',
      now,
      nowG === 0 ? '' : gramsText(nowG),
    ]),
  };
}

const SHOWN: readonly NutrientKey[] = [
  'energyKcal',
  'proteinG',
  'carbohydrateG',
  'fatG',
  'fiberG',
  'sugarsG',
  'sodiumMg',
];

/** Figures of one piece, before and after, by name; a figure nobody has is absent. */
export interface PieceFigures {
  readonly name: string;
  readonly key: string;
  readonly before: number | undefined;
  readonly after: number | undefined;
  readonly words: (value: number) => string;
}

/** A piece of the recipe as it stands in the book beside a piece of the balanced mix. */
export function pieceFigures(
  original: Recipe,
  balanced: BalancedMix,
  book: Book,
  energyShown: boolean,
): PieceFigures[] {
  const whole = recipeTotals(original, book.foods);
  const before = perPiece(whole);
  const { mix, grams } = balanced;
  const keys = SHOWN.filter((key) => energyShown || key !== 'energyKcal');
  return [
    ...keys.map((key) => ({
      key,
      name: nutrientName(key),
      before: before.totals.of(key).value,
      after: reached(mix, grams, { kind: 'nutrient', key }),
      words: (value: number) => amountWords(value, key),
    })),
    {
      key: 'pieceMassG',
      name: 'mass',
      before: before.pieceMassG,
      after: reached(mix, grams, { kind: 'piece_mass' }),
      words: (value: number) => `${figure(value, 'g')} g`,
    },
    {
      key: 'costCents',
      name: 'cost',
      before: centsPerPiece(original, book.foods),
      after: reached(mix, grams, { kind: 'cost' }),
      words: (value: number) => `$${(value / 100).toFixed(2)}`,
    },
  ];
}

export const figuresTable = (figures: readonly PieceFigures[], pieceUnit: string): Section => ({
  kind: 'table',
  heading: `Per ${pieceUnit}`,
  columns: [
    { name: 'Figure', align: 'left' },
    { name: 'Before', align: 'right' },
    { name: 'After', align: 'right' },
  ],
  rows: figures
    .filter(({ before, after }) => before !== undefined || after !== undefined)
    .map(({ name, before, after, words }) => [
      name,
      before === undefined ? 'not known' : words(before),
      after === undefined ? 'not known' : words(after),
    ]),
});

/** "Protein moves most with whey: 0.77 g a gram; for the money with oats: 16 g a cent." */
export function sensitivityLine({ mix }: BalancedMix, key: NutrientKey): string | undefined {
  const { perGram, perCent } = sensitivity(mix, key);
  if (!perGram) return undefined;
  const name = nutrientName(key);
  const amount = (mover: Mover) =>
    `${Number(mover.amount.toPrecision(2))} ${amountWords(0, key).split(' ')[1]}`;
  const money = perCent ? `; for the money ${perCent.food.name}: ${amount(perCent)} a cent` : '';
  return `${name.charAt(0).toUpperCase()}${name.slice(1)} moves most with ${perGram.food.name}: ${amount(perGram)} a gram${money}.`;
}
