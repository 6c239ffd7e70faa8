import { type AllergenMark, NEEDS, type Need } from '../../nutrition/allergens.ts';
import { type AllergenReport, allergensOf } from '../../nutrition/allergens-of.ts';
import type { Book } from '../../nutrition/book.ts';
import type { Verdict } from '../../nutrition/conflict.ts';
import { recipeVerdict } from '../../nutrition/meets-needs.ts';
import type { Recipe } from '../../nutrition/recipe.ts';
import { recipeAmounts } from '../../nutrition/recipe-totals.ts';
import { MOST_DAYS } from './date-mark.ts';
import type { BatchFacts } from './ledger.ts';

/**
 * What goes into a batch, as known now. Optional lines count as used: an allergen too many on a label hurts nobody.
 * Throws `unknown_food` when a line's food is missing from the book.
 */
export function batchFacts(book: Book, recipe: Recipe, pieces: number): BatchFacts {
  const factor = pieces / recipe.yieldPieces;
  const foods = recipeAmounts(recipe, book.foods).map(({ food }) => food);
  const report = allergensOf(foods, book.settings.allergenList);
  const keepCold = recipe.storage !== 'room';
  const verdict = (need: Need): Verdict => recipeVerdict(recipe, book.foods, [need]);
  return {
    ingredients: recipe.lines.map((line) => ({
      foodId: line.foodId,
      name: book.foods.get(line.foodId)?.name ?? line.foodId,
      massG: line.massG * factor,
    })),
    contains: marksOf(report, 'contains'),
    advisory: marksOf(report, 'advisory'),
    notKnown: report.findings.flatMap(({ allergen, status }) => (status === 'not_known' ? [allergen] : [])),
    verdicts: Object.fromEntries(NEEDS.map((need) => [need, verdict(need)])) as Record<Need, Verdict>,
    days: keepCold ? Math.min(recipe.shelfLifeDays, book.settings.mostDays, MOST_DAYS) : recipe.shelfLifeDays,
    keepCold,
  };
}

function marksOf(report: AllergenReport, status: 'contains' | 'advisory'): readonly AllergenMark[] {
  const byName = new Map<string, AllergenMark>();
  for (const { allergen, ...finding } of report.findings.filter((each) => each.status === status)) {
    for (const { species } of finding[status])
      byName.set(`${allergen} ${species ?? ''}`, { allergen, ...(species === undefined ? {} : { species }) });
  }
  return [...byName.values()];
}
