import type { NutrientKey } from '../../../nutrition/nutrients.ts';
import type { Answer } from '../../answer.ts';
import type { Basis } from './basis.ts';
import { amountWords, grams, nutrientName } from './figure-words.ts';
import { type Figure, figureData, figuresOf, thousandth } from './figures.ts';
import { sourceData, sourcesLine } from './sources.ts';
import type { Subject } from './subject.ts';

/** One side of a comparison. */
export interface Side {
  readonly subject: Subject;
  readonly basis: Basis;
  /** Head of its column. */
  readonly name: string;
  /** As it follows the figure: "of Oat bars", "cut into 8". */
  readonly after: string;
}

/** Recipes, foods or cuts beside one another. The first nutrient of `keys` leads the one-line answer. */
export function compareAnswer(sides: readonly Side[], keys: readonly NutrientKey[]): Answer {
  const columns = sides.map((side) => figuresOf(side.subject, side.basis, keys));
  const foods = sides.flatMap((side) => side.subject.amounts.map((amount) => amount.food));
  const uncounted = sides.flatMap((side) => side.subject.uncounted);
  return {
    title: titleOf(
      sides,
      columns.map((column) => column[0]),
    ),
    sections: [
      {
        kind: 'table',
        columns: [
          { name: 'Nutrient', align: 'left' },
          ...sides.map((side) => ({ name: side.name, align: 'right' as const })),
        ],
        rows: [
          ['grams', ...sides.map((side) => grams(side.basis.massG))],
          ...keys.map((key, row) => [nutrientName(key), ...columns.map((column) => cell(column[row]))]),
        ],
      },
      { kind: 'text', text: sourcesLine(foods) },
      ...(uncounted.length > 0
        ? [
            {
              kind: 'list' as const,
              heading: 'Not counted',
              items: uncounted.map((line) => `${line.message} ${line.hint}`),
            },
          ]
        : []),
    ],
    cautions: [],
    next: sides.map(({ name, subject }) => ({ label: name, says: asksAbout(subject) })),
    audience: 'channel',
    data: {
      compared: sides.map((side, at) => ({
        title: side.name,
        per: side.basis.words,
        massG: thousandth(side.basis.massG),
        ...figureData(columns[at] ?? []),
      })),
      sources: sourceData(foods),
    },
  };
}

/** The request that asks about one side alone, at its own cut. */
const asksAbout = ({ title, recipe, pieces }: Subject): string =>
  `macros ${title}${recipe && recipe.yieldPieces !== pieces ? ` cut into ${pieces}` : ''}`;

/** "22 g protein in a bar of Oat bars, 15 g in a bar of Cherry oat bars". */
function titleOf(sides: readonly Side[], leads: readonly (Figure | undefined)[]): string {
  const parts = sides.map((side, at) => {
    const lead = leads[at];
    const name = at === 0 && lead && lead.key !== 'energyKcal' ? ` ${nutrientName(lead.key)}` : '';
    return `${cell(lead)}${name} in ${side.basis.words} ${side.after}`;
  });
  return parts.join(', ');
}

const cell = (figure: Figure | undefined): string => {
  if (figure?.value === undefined) return 'not known';
  return `${figure.atLeast ? 'at least ' : ''}${amountWords(figure.value, figure.key)}`;
};
