import type { StockView } from '../../../kitchen/stock/view.ts';
import { stockView, sumOf } from '../../../kitchen/stock/view.ts';
import type { Need } from '../../../nutrition/allergens.ts';
import { recipesMeeting } from '../../../nutrition/meets-needs.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { perPiece, recipeTotals } from '../../../nutrition/recipe-totals.ts';
import type { Asked } from '../../command.ts';
import { deskOf } from '../../stock/desk.ts';

/** A snack of the kitchen that goes some way into a range. */
export interface Snack {
  readonly recipe: Recipe;
  readonly pieces: number;
  readonly proteinG: number;
  readonly carbohydrateG: number;
  /** Pieces in date now; absent when the kitchen does not know its stock. */
  readonly there?: number;
}

/** What a snack must not hold: needs of the shared list and foods beyond it. */
export interface Avoided {
  readonly needs: readonly Need[];
  readonly foods: readonly string[];
}

/** More of one thing than this is a meal, not a snack. */
const MOST_PIECES = 2;
const MOST_SHOWN = 3;

/**
 * What may be eaten now towards at least `leastG` of a nutrient: from stock when the kitchen keeps one, else from its
 * recipes; only what nothing speaks against for the needs that were stated or are kept.
 */
export async function snacksFor(
  asked: Asked,
  of: 'protein' | 'carbohydrate',
  leastG: number,
  avoided: Avoided,
): Promise<Snack[]> {
  const { book } = asked.kitchen;
  const view = await stockOf(asked);
  const fitting = recipesMeeting(book.recipes, book.foods, avoided.needs, avoided.foods);
  const found = fitting.flatMap((recipe) => {
    const there = view && piecesThere(view, recipe, avoided.needs);
    return there === 0 ? [] : snackOf(asked, recipe, of, leastG, there);
  });
  return found.sort((a, b) => missing(a, of, leastG) - missing(b, of, leastG)).slice(0, MOST_SHOWN);
}

/** Pieces in date of batches that, as they were made, meet the needs. */
const piecesThere = (view: StockView, recipe: Recipe, needs: readonly Need[]): number =>
  sumOf(
    view.usable.filter(
      ({ batch }) =>
        batch.recipeId === recipe.id &&
        needs.every((need) => batch.facts.verdicts[need] === 'clear_by_label'),
    ),
  );

async function stockOf(asked: Asked): Promise<StockView | undefined> {
  try {
    const { ledger, book, nowMs } = deskOf(asked);
    return stockView(await ledger.holdings(), book, nowMs);
  } catch (error) {
    // A kitchen without a memory still has its recipes.
    if (error instanceof Problem && error.code === 'unavailable') return undefined;
    throw error;
  }
}

function snackOf(
  { kitchen }: Asked,
  recipe: Recipe,
  of: 'protein' | 'carbohydrate',
  leastG: number,
  there: number | undefined,
): Snack[] {
  const { totals } = perPiece(recipeTotals(recipe, kitchen.book.foods));
  const proteinG = totals.of('proteinG').value;
  const carbohydrateG = totals.of('carbohydrateG').value;
  const each = of === 'protein' ? proteinG : carbohydrateG;
  if (proteinG === undefined || carbohydrateG === undefined || !each) return [];
  const pieces = Math.min(MOST_PIECES, there ?? MOST_PIECES, Math.max(1, Math.ceil(leastG / each)));
  return [
    {
      recipe,
      pieces,
      proteinG: proteinG * pieces,
      carbohydrateG: carbohydrateG * pieces,
      ...(there === undefined ? {} : { there }),
    },
  ];
}

/** How far a snack is from the start of the range, fewer pieces first. */
const missing = (snack: Snack, of: 'protein' | 'carbohydrate', leastG: number): number =>
  Math.abs((of === 'protein' ? snack.proteinG : snack.carbohydrateG) - leastG) + snack.pieces;
