import type { Book } from '../../../nutrition/book.ts';
import { completeness } from '../../../nutrition/completeness.ts';
import { energyShares } from '../../../nutrition/energy.ts';
import type { NutrientKey } from '../../../nutrition/nutrients.ts';
import type { Answer, Section } from '../../answer.ts';
import type { Slots } from '../../slots.ts';
import type { Basis } from './basis.ts';
import { amountWords, grams, nutrientName, piecesWord, rangeWords } from './figure-words.ts';
import { type Figure, figureData, figuresOf, partOf, thousandth } from './figures.ts';
import { nextSteps } from './next-steps.ts';
import { snackLines } from './snack-lines.ts';
import { sourceData, sourcesLine } from './sources.ts';
import type { Subject } from './subject.ts';
import { targetLines } from './targets.ts';

/** What the answer is made from, all resolved. */
export interface Asking {
  readonly subject: Subject;
  readonly basis: Basis;
  /** The nutrients to show, already without those this asker may not see. */
  readonly keys: readonly NutrientKey[];
  /** True when the person named nutrients: then only those are told. */
  readonly named: boolean;
  readonly energyShown: boolean;
  /** Where the calories are that this answer does not show. */
  readonly elsewhere: readonly string[];
  readonly slots: Slots;
  readonly book: Book;
}

/** The nutrients of the one-line answer when none were named. */
const IN_TITLE: readonly NutrientKey[] = ['proteinG', 'energyKcal', 'carbohydrateG', 'fatG'];

/** Figures of one part of a subject: the line that answers by itself, the table, how sure, and from where. */
export function figuresAnswer(asking: Asking): Answer {
  const { subject, basis, keys, named } = asking;
  const figures = figuresOf(subject, basis, keys);
  const foods = subject.amounts.map((amount) => amount.food);
  const inTitle = named ? figures : IN_TITLE.flatMap((key) => figures.find((f) => f.key === key) ?? []);
  const target = targetLines(asking);
  return {
    title: `${inTitle.map(titleFigure).join(', ')} in ${basis.words}: ${subject.title}${lostWords(subject)}`,
    sections: [
      ...(target.lines.length > 0 ? [{ kind: 'list', items: target.lines } as const] : []),
      figureTable(figures, basis),
      ...textSections([...aboutLines(asking, figures), sourcesLine(foods), ...asking.elsewhere]),
      ...noteSection(subject),
    ],
    cautions: [],
    next: nextSteps(asking),
    audience: 'channel',
    data: {
      title: subject.title,
      ...(subject.recipe && { recipeId: subject.recipe.id, version: subject.recipe.version }),
      per: basis.words,
      pieces: subject.pieces,
      massG: thousandth(basis.massG),
      ...figureData(figures),
      ...shareData(asking),
      ...(target.data.length > 0 && { targets: target.data }),
      sources: sourceData(foods),
      notCounted: subject.uncounted.map(({ written, reason }) => ({ written, reason })),
    },
  };
}

/** "22 g protein (20 to 24 by cup and spoon)"; ranges only where they help: protein, energy, and what was named. */
function titleFigure(figure: Figure): string {
  const name = figure.key === 'energyKcal' ? '' : ` ${nutrientName(figure.key)}`;
  if (figure.value === undefined) return `${nutrientName(figure.key)} not known`;
  const amount = `${figure.atLeast ? 'at least ' : ''}${amountWords(figure.value, figure.key)}${name}`;
  if (!figure.byCup || figure.atLeast) return amount;
  if (figure.key === 'proteinG')
    return `${amount} (${rangeWords(figure.byCup, figure.key)} by cup and spoon)`;
  return figure.key === 'energyKcal' ? `${amount} (${rangeWords(figure.byCup, figure.key)})` : amount;
}

/** A figure that leaves out a food must say so where it stands, not further down. */
function lostWords({ uncounted }: Subject): string {
  const lost = uncounted.filter((line) => line.reason !== 'left_to_the_cook');
  return lost.length > 0 ? `, not counting ${lost.map((line) => `"${line.written}"`).join(', ')}` : '';
}

function figureTable(figures: readonly Figure[], basis: Basis): Section {
  return {
    kind: 'table',
    heading: `In ${basis.words}${basis.words.endsWith(grams(basis.massG)) ? '' : ` (${grams(basis.massG)})`}`,
    columns: [
      { name: 'Nutrient', align: 'left' },
      { name: 'Figure', align: 'right' },
      { name: 'By cup', align: 'right' },
      { name: 'Weighed', align: 'right' },
    ],
    rows: figures.map((figure) => [
      nutrientName(figure.key),
      figure.value === undefined
        ? 'not known'
        : `${figure.atLeast ? 'at least ' : ''}${amountWords(figure.value, figure.key)}`,
      figure.byCup ? rangeWords(figure.byCup, figure.key) : '',
      figure.weighed ? rangeWords(figure.weighed, figure.key) : '',
    ]),
  };
}

/** A piece, or a plate of several foods; a batch, 100 g or a single food is no snack to judge. */
const isSnack = ({ subject, basis }: Asking): boolean =>
  subject.amounts.length > 1 && (basis.cut || (!subject.recipe && subject.pieces === 1));

const textSections = (lines: readonly string[]): Section[] => lines.map((text) => ({ kind: 'text', text }));

function aboutLines(asking: Asking, figures: readonly Figure[]): string[] {
  const { subject } = asking;
  return [
    ...cutLine(subject),
    ...figures.filter((figure) => figure.missing.length > 0).map((figure) => missingLine(figure, subject)),
    ...shareLine(asking),
    ...(asking.named || !isSnack(asking) ? [] : snackLines(asking)),
  ];
}

function cutLine({ recipe, pieces, pieceUnit, handlingLoss, moistureLoss }: Subject): string[] {
  if (!recipe) return [];
  const percent = (share: number) => `${Number((share * 100).toFixed(1))} %`;
  const lost = handlingLoss > 0 ? ` ${percent(handlingLoss)} stays in the bowl and is not counted.` : '';
  const dried =
    moistureLoss > 0 ? ` ${percent(moistureLoss)} of the weight leaves as water; nutrients stay.` : '';
  const from = recipe.pan ? `one ${recipe.pan.name}` : 'one batch';
  return [
    `${pieces} ${piecesWord(pieceUnit, pieces)} from ${from}${recipe.version === '' ? '' : `, recipe of ${recipe.version}`}.${lost}${dried}`,
  ];
}

function missingLine({ key, missing }: Figure, subject: Subject): string {
  const share = completeness(subject.amounts, key)?.massShare ?? 0;
  const names = missing.map((food) => food.name).join(', ');
  return `No ${nutrientName(key)} figure for ${names}; known for ${Math.floor(share * 100)} % of the weight.`;
}

function shareLine(asking: Asking): string[] {
  const shares =
    asking.energyShown && !asking.named ? energyShares(partOf(asking.subject, asking.basis)) : undefined;
  if (!shares) return [];
  const percent = (share: number) => `${Math.round(share * 100)} %`;
  const { carbohydrate, protein, fat } = shares;
  return [
    `Energy: ${percent(carbohydrate)} carbohydrate, ${percent(protein)} protein, ${percent(fat)} fat (4-4-9).`,
  ];
}

function shareData(asking: Asking): Record<string, unknown> {
  const shares = asking.energyShown ? energyShares(partOf(asking.subject, asking.basis)) : undefined;
  if (!shares) return {};
  const entries = Object.entries(shares).map(([name, share]) => [name, thousandth(share)]);
  return { energyShares: Object.fromEntries(entries) };
}

/** How each amount was read, and what was not counted: nothing is lost without a word. */
function noteSection(subject: Subject): Section[] {
  const lost = subject.uncounted.map((line) => `Not counted: ${line.message} ${line.hint}`);
  const items = [...lost, ...subject.notes];
  return items.length > 0 ? [{ kind: 'list', heading: 'How it was read', items }] : [];
}
