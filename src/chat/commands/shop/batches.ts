import { amountsFor } from '../../../kitchen/shopping/shopping.ts';
import type { CalendarDate } from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { scaleRecipe } from '../../../nutrition/scale/scale-recipe.ts';
import type { FoodAmount } from '../../../nutrition/totals.ts';
import type { Asked } from '../../command.ts';
import { freeWords, needsOf } from '../../need-words.ts';
import type { Slots } from '../../slots.ts';
import { piecesOf } from '../../stock/words.ts';
import { targetOf } from '../scale/target-of.ts';

/** One batch that is bought for. */
export interface Batch {
  readonly recipe: Recipe;
  readonly pieces: number;
  readonly amounts: readonly FoodAmount[];
  /** What it is made without, as people ask for it: "nut-free". */
  readonly free?: string;
}

/** What is bought for: batches, how to call them, and what had to be taken for granted or does not fit. */
export interface Trip {
  readonly batches: readonly Batch[];
  /** "40 oat bars", "Sat Dec 5". */
  readonly name: string;
  /** What is made for what, one line each; empty when the name says it all. */
  readonly lines: readonly string[];
  readonly notes: readonly string[];
  /** The day the food is used: what is past its date then does not count as on hand. */
  readonly date: CalendarDate;
  /** The words that ask for it again, whoever says them. */
  readonly says?: string;
}

/** More kinds than this are no one trip; a longer message is a mistake. */
const MOST_KINDS = 12;

/** One batch of the size the slots say; one yield of the card when they say none. */
export function batchOf({ kitchen }: Asked, recipe: Recipe, slots: Slots): Batch {
  const said = targetOf(recipe, kitchen, slots);
  const target = said?.target ?? ({ kind: 'batches', factor: 1 } as const);
  const scaled = scaleRecipe(recipe, kitchen.book.foods, target, said?.options);
  const needs = needsOf(slots.avoid);
  return {
    recipe,
    pieces: scaled.pieces,
    amounts: amountsFor(scaled),
    ...(needs.length > 0 ? { free: freeWords(needs) } : {}),
  };
}

/** Refuses more kinds than anybody shops for at once. */
export function checkKinds(kinds: number): void {
  if (kinds <= MOST_KINDS) return;
  throw new Problem(
    'bad_quantity',
    `That is ${kinds} kinds; I write a list for up to ${MOST_KINDS} at once.`,
    'Ask for some of them, like "shop for 40 oat bars and 24 peanut cocoa bites".',
  );
}

/** "40 oat bars", "24 nut-free peanut cocoa bites". */
export function batchName({ recipe, pieces, free }: Batch): string {
  const { title, pieceUnit } = recipe;
  const recipeTitle =
    free === undefined ? title : `${free} ${title.charAt(0).toLowerCase()}${title.slice(1)}`;
  return piecesOf(pieces, { recipeTitle, pieceUnit });
}
