import type { BatchStory } from '../../kitchen/stock/batch-story.ts';
import { placeName } from '../../kitchen/stock/places.ts';
import { sumOf } from '../../kitchen/stock/view.ts';
import type { Asked } from '../command.ts';
import { clockText, piecesOf } from './words.ts';

/** One batch in a line: what, when, by whom, what became of it. */
export function storyLine(asked: Asked, story: BatchStory): string {
  const { batch, made, served, tossed, left, counted } = story;
  const variant = batch.variant === undefined ? '' : ` (${batch.variant})`;
  const where = [...new Set(left.map(({ location }) => placeName(asked.kitchen.book, location)))].join(', ');
  const parts = [
    `served ${served}`,
    `tossed ${tossed}`,
    ...(counted === 0 ? [] : [`counted ${counted > 0 ? '+' : ''}${counted}`]),
    `left ${sumOf(left)}${where === '' ? '' : ` (${where})`}`,
  ];
  return `${batch.code}: ${piecesOf(made, batch)}${variant}, made ${clockText(asked, batch.madeMs)} by ${story.madeBy}; ${parts.join(', ')}`;
}

/** The lots that went into a batch, or that none was logged. */
export function lotsLine(asked: Asked, { batch }: BatchStory): string {
  if (batch.lots.length === 0) return `${batch.code}: no lot was logged`;
  const { foods } = asked.kitchen.book;
  return `${batch.code}: ${batch.lots.map(({ foodId, lot }) => `${foods.get(foodId)?.name ?? foodId} lot ${lot}`).join(', ')}`;
}

/** Products that were not approved when it was made, why they were let pass, and by whom. */
export function overrideLines({ batch, madeBy }: BatchStory): string[] {
  const { override } = batch.facts;
  return override
    ? [
        `${batch.code}: ${override.products.join(', ')}, not approved; logged by ${madeBy}: ${override.reason}`,
      ]
    : [];
}

export const storyData = (story: BatchStory): Record<string, unknown> => ({
  batch: story.batch.code,
  recipe: story.batch.recipeId,
  madeDate: story.batch.madeDate,
  madeBy: story.madeBy,
  made: story.made,
  served: story.served,
  tossed: story.tossed,
  left: sumOf(story.left),
  lots: story.batch.lots,
  ...(story.batch.facts.override ? { override: story.batch.facts.override } : {}),
});
