import type { Book } from '../../../nutrition/book.ts';
import type { MethodStep, Recipe, RecipeLine } from '../../../nutrition/recipe.ts';
import type { Answer, Section } from '../../answer.ts';

/** One recipe as it is written: yield, amounts, method with what to watch, how to hold it. */
export function recipeCard(recipe: Recipe, book: Book): Answer {
  return {
    title: `${recipe.title}: makes ${recipe.yieldPieces} ${plural(recipe.pieceUnit, recipe.yieldPieces)}.`,
    sections: [
      {
        kind: 'table',
        heading: 'Ingredients',
        columns: [
          { name: 'Amount', align: 'left' },
          { name: 'Grams', align: 'right' },
        ],
        rows: recipe.lines.map((line) => [asWritten(line, book), grams(line.massG)]),
      },
      ...(recipe.steps.length > 0
        ? [{ kind: 'steps', heading: 'Method', items: recipe.steps.map(stepText) } satisfies Section]
        : []),
      { kind: 'list', heading: 'Pan and holding', items: holding(recipe) },
    ],
    cautions: recipe.note ? [recipe.note] : [],
    next: [`40 ${recipe.title}`, `macros ${recipe.title}`, `allergens ${recipe.title}`].map((says) => ({
      label: says,
      says,
    })),
    audience: 'channel',
    data: dataOf(recipe),
  };
}

/** The card's own words; the food's name too where the card calls it something else. */
function asWritten(line: RecipeLine, book: Book): string {
  const name = book.foods.get(line.foodId)?.name ?? line.foodId;
  const first = name.split(',')[0]?.toLowerCase() ?? '';
  const named = line.written.toLowerCase().includes(first) ? line.written : `${line.written} (${name})`;
  return [named, line.prep, line.optional ? 'optional' : undefined].filter((part) => part).join(', ');
}

const grams = (massG: number): string => (massG < 10 ? massG.toFixed(1) : String(Math.round(massG)));

const stepText = ({ text, control }: MethodStep): string =>
  control ? `${text.replace(/[.!]?$/, '.')} Control point: ${control.watch}, ${control.limit}.` : text;

function holding(recipe: Recipe): string[] {
  const { pan, cut, set } = recipe;
  const items = [`Storage: ${recipe.storage}, at most ${recipe.shelfLifeDays} days; the day made is day 1.`];
  if (pan) items.push(`Pan: ${pan.name}${cut ? `, cut ${cut.rows} by ${cut.columns}` : ''}.`);
  if (set) items.push(`Set: at least ${minutes(set.leastMin)}, better ${minutes(set.betterMin)}.`);
  items.push(`Version of ${recipe.version}.`);
  return items;
}

const minutes = (min: number): string => (min % 60 === 0 && min > 0 ? `${min / 60} h` : `${min} min`);

const plural = (unit: string, count: number): string =>
  count === 1 || unit.endsWith('s') ? unit : `${unit}s`;

const dataOf = (recipe: Recipe): Record<string, unknown> => ({
  recipe: recipe.id,
  version: recipe.version,
  yieldPieces: recipe.yieldPieces,
  pieceUnit: recipe.pieceUnit,
  ingredients: recipe.lines.map(({ foodId, written, massG, role, optional }) => ({
    food: foodId,
    written,
    massG: Math.round(massG * 10) / 10,
    role,
    optional,
  })),
  storage: recipe.storage,
  shelfLifeDays: recipe.shelfLifeDays,
  ...(recipe.set ? { setLeastMin: recipe.set.leastMin, setBetterMin: recipe.set.betterMin } : {}),
});
