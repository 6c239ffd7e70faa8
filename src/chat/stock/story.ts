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

/** How a lot is known that nobody said. */
export const NOT_SAID = 'taken from the open or oldest package on hand, not said';

/** The lots that went into a batch, those only the pantry counted told apart; or that none was logged. */
export function lotsLine(asked: Asked, { batch, countedLots }: BatchStory): string {
  const { foods } = asked.kitchen.book;
  const named = ({ foodId, lot }: BatchStory['countedLots'][number]) =>
    `${foods.get(foodId)?.name ?? foodId} lot ${lot}`;
  const lots = [...batch.lots.map(named), ...countedLots.map((each) => `${named(each)} (${NOT_SAID})`)];
  return `${batch.code}: ${lots.length === 0 ? 'no lot was logged' : lots.join(', ')}`;
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
  countedLots: story.countedLots,
  ...(story.batch.facts.override ? { override: story.batch.facts.override } : {}),
});
