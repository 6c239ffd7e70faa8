import type { Need } from '../../../nutrition/allergens.ts';
import type { Book } from '../../../nutrition/book.ts';
import type { MethodStep, Recipe, RecipeLine } from '../../../nutrition/recipe.ts';
import { recipeFoods, standsAgainst } from '../../../nutrition/swap/offer.ts';
import type { Answer, Section } from '../../answer.ts';
import { CROSS_CONTACT, isAllergy, reactionCaution } from '../../need-words.ts';
import { rawCautions } from '../../raw-caution.ts';
import { verdictTitle } from '../allergens/verdict-words.ts';
import { allergenLine } from '../scale/allergen-line.ts';

/**
 * One recipe as it is written: yield, allergens, amounts, method with what to watch, how to hold it. Asked for with
 * needs, how it stands to them comes first, and only the asker sees it.
 */
export function recipeCard(recipe: Recipe, book: Book, needs: readonly Need[] = []): Answer {
  const makes = `makes ${recipe.yieldPieces} ${plural(recipe.pieceUnit, recipe.yieldPieces)}.`;
  const isForNeed = needs.length > 0;
  const found = standsAgainst(recipeFoods(recipe, book.foods), needs);
  return {
    title: isForNeed ? verdictTitle(recipe.title, needs, found) : `${recipe.title}: ${makes}`,
    sections: [
      ...(isForNeed ? [{ kind: 'text', text: `M${makes.slice(1)}` } as const] : []),
      { kind: 'text', text: allergenLine(recipe, book) },
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
    cautions: [
      ...rawCautions(recipe, book),
      ...(recipe.note ? [recipe.note] : []),
      ...(isForNeed ? [CROSS_CONTACT] : []),
      ...(isAllergy(needs) ? [reactionCaution(book.settings)] : []),
    ],
    next: [`40 ${recipe.title}`, `macros ${recipe.title}`, `allergens ${recipe.title}`].map((says) => ({
      label: says,
      says,
    })),
    audience: isForNeed ? 'asker' : 'channel',
    data: { ...dataOf(recipe), ...(isForNeed ? { avoid: needs } : {}) },
  };
}

/** The card's own words; the food's name too where the card calls it something else. */
function asWritten(line: RecipeLine, book: Book): string {
  const name = book.foods.get(line.foodId)?.name ?? line.foodId;
  const first = name.split(',')[0]?.toLowerCase() ?? '';
  const named = line.written.toLowerCase().includes(first) ? line.written : `${line.written} (${name})`;
  const prep = line.prep && !line.written.includes(line.prep) ? line.prep : undefined;
  return [named, prep, line.optional ? 'optional' : undefined].filter((part) => part).join(', ');
}

const grams = (massG: number): string => (massG < 10 ? massG.toFixed(1) : String(Math.round(massG)));

const stepText = ({ text, control }: MethodStep): string =>
  control ? `${text.replace(/[.!]?$/, '.')} Control point: ${control.watch}, ${control.limit}.` : text;

function holding(recipe: Recipe): string[] {
  const { pan, cut, set } = recipe;
  const items = [`Storage: ${recipe.storage}, at most ${recipe.shelfLifeDays} days; the day made is day 1.`];
  if (pan) items.push(`Pan: ${pan.name}${cut ? `, cut ${cut.rows} by ${cut.columns}` : ''}.`);
  if (set) items.push(`Set: at least ${minutes(set.leastMin)}, better ${minutes(set.betterMin)}.`);
  if (recipe.version !== '') items.push(`Version of ${recipe.version}.`);
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
