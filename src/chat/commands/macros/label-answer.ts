import { labelAllows, labelClass } from '../../../nutrition/label/compliance.ts';
import { type LabelRow, labelRows, servingsPerContainer } from '../../../nutrition/label/label.ts';
import type { NutrientKey } from '../../../nutrition/nutrients.ts';
import type { Answer } from '../../answer.ts';
import type { Asking } from './answer-figures.ts';
import { amountWords, grams, nutrientName, nutrientUnit } from './figure-words.ts';
import { partOf, thousandth } from './figures.ts';
import { sourceData, sourcesLine } from './sources.ts';
import type { Subject } from './subject.ts';

/** Label figures of one serving: rounded by 21 CFR 101.9(c), percent Daily Values, in the regulation's order. */
export function labelAnswer(asking: Asking): Answer {
  const { subject, basis } = asking;
  const rows = labelRows(partOf(subject, basis)).filter(
    (row) => row.key !== 'energyKcal' || asking.energyShown,
  );
  const serving = `${basis.words} (${grams(basis.massG)})`;
  const servings = servingsPerContainer(subject.pieces);
  const foods = subject.amounts.map((amount) => amount.food);
  const text = labelText(subject.title, serving, servings, rows);
  return {
    title: `${titleFigures(rows)} in ${serving}: label figures of ${subject.title}`,
    sections: [
      {
        kind: 'table',
        heading: `Serving: ${serving}. Servings in the batch: ${servings}`,
        columns: [
          { name: 'Per serving', align: 'left' },
          { name: 'Amount', align: 'right' },
          { name: '% DV', align: 'right' },
        ],
        rows: rows.map((row) => [indented(row), amountOf(row), percentOf(row)]),
      },
      {
        kind: 'list',
        items: [...missingLines(rows), ...footnotes(rows), sourcesLine(foods), ...asking.elsewhere],
      },
    ],
    cautions: [
      'Worked out from tables and package labels, not tested. Ingredients and allergens must be on the label too.',
    ],
    next: subject.recipe
      ? [
          { label: 'Allergens', says: `allergens in ${subject.recipe.title}` },
          { label: 'Macros', says: `macros ${subject.recipe.title}${cutWords(subject)}` },
        ]
      : [],
    attachments: [{ fileName: `${slug(subject.title)}-label.txt`, mediaType: 'text/plain', content: text }],
    audience: 'channel',
    data: {
      title: subject.title,
      ...(subject.recipe && { recipeId: subject.recipe.id, version: subject.recipe.version }),
      servingG: thousandth(basis.massG),
      servings: subject.pieces,
      label: rows.map(rowData),
      sources: sourceData(foods),
    },
  };
}

const cutWords = ({ recipe, pieces }: Subject): string =>
  recipe && recipe.yieldPieces !== pieces ? ` cut into ${pieces}` : '';

function titleFigures(rows: readonly LabelRow[]): string {
  const wanted: readonly NutrientKey[] = ['proteinG', 'energyKcal', 'carbohydrateG', 'fatG'];
  return wanted
    .flatMap((key) => rows.find((row) => row.key === key) ?? [])
    .map((row) =>
      row.key === 'energyKcal'
        ? `${amountOf(row)} kcal`
        : `${amountOf(row)} ${nutrientName(row.key ?? 'fatG')}`,
    )
    .join(', ');
}

const indented = (row: LabelRow): string => `${'  '.repeat(row.indent)}${row.name}`;

function amountOf(row: LabelRow): string {
  if (!row.key || !row.amount) return 'no figure';
  const unit = row.key === 'energyKcal' ? '' : ` ${nutrientUnit(row.key)}`;
  const words = `${row.amount.lessThan ? 'less than ' : ''}${row.amount.shown}${unit}`;
  return row.atLeast ? `at least ${words}` : words;
}

const percentOf = (row: LabelRow): string => (row.percentDv === undefined ? '' : `${row.percentDv} %`);

function missingLines(rows: readonly LabelRow[]): string[] {
  return rows
    .filter((row) => row.missing.length > 0)
    .map((row) => {
      const names =
        row.exact === undefined ? 'any ingredient' : row.missing.map((food) => food.name).join(', ');
      return `${row.name}: no figure for ${names}.`;
    });
}

function footnotes(rows: readonly LabelRow[]): string[] {
  const protein = rows.find((row) => row.key === 'proteinG')?.exact;
  const least = protein === undefined ? undefined : labelAllows(labelClass('proteinG'), protein).least;
  return [
    '% DV is from the amount before rounding. Protein has none here: it needs a correction for quality (21 CFR 101.9(c)(7)). Total sugars and trans fat have no Daily Value. Trans fat is not in the food table.',
    ...(least !== undefined && protein !== undefined && protein >= 1
      ? [
          `A package may hold ${amountWords(least, 'proteinG')} and still agree with a label of ${amountWords(protein, 'proteinG')} protein (21 CFR 101.9(g)).`,
        ]
      : []),
  ];
}

/** The label as plain text to copy or print, 40 columns wide. */
function labelText(title: string, serving: string, servings: string, rows: readonly LabelRow[]): string {
  const lines = rows.map((row) => {
    const right = `${amountOf(row).padStart(14)}${percentOf(row).padStart(6)}`;
    return `${indented(row).padEnd(20)}${right}`;
  });
  const head = [
    title,
    `Serving: ${serving}`,
    `Servings: ${servings}`,
    '',
    `${''.padEnd(20)}${'Amount'.padStart(14)}${'% DV'.padStart(6)}`,
  ];
  return `${[...head, ...lines].join('\n')}\n`;
}

const rowData = (row: LabelRow) => ({
  name: row.name,
  ...(row.key && { nutrient: row.key }),
  ...(row.amount && { shown: row.amount.shown, lessThan: row.amount.lessThan }),
  ...(row.exact !== undefined && { exact: thousandth(row.exact) }),
  ...(row.percentDv !== undefined && { percentDv: row.percentDv }),
  atLeast: row.atLeast,
});

const slug = (title: string): string =>
  title
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 60);
