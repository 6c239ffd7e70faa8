import { sayInstead, type Which } from '../../../kitchen/stock/choose.ts';
import { lastDay, MOST_DAYS } from '../../../kitchen/stock/date-mark.ts';
import type { Desk } from '../../../kitchen/stock/desk.ts';
import type { Holding } from '../../../kitchen/stock/ledger.ts';
import { type StockView, stockView } from '../../../kitchen/stock/view.ts';
import { addDays, dateOf, sayDate } from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answer } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { batchCalled } from '../../stock/which.ts';
import { holdingLine, LOCAL_CODE, piecesOf, untilText } from '../../stock/words.ts';
import { recipeMeant } from '../../which-recipe.ts';
import { answerOf } from './overview.ts';

/** "use by of batch B3", "are the bars from sunday still good". */
export async function useBy(
  asked: Asked,
  desk: Desk,
  holdings: readonly Holding[],
  which: Which,
): Promise<Answer> {
  const view = stockView(holdings, asked.kitchen.book, asked.request.nowMs);
  const [first, ...more] = [...view.mustGo, ...view.usable, ...view.held, ...view.setting, ...view.frozen];
  if (!first) return noneLeft(asked, desk, which, view);
  const title = `${first.batch.code}, ${piecesOf(first.pieces, first.batch)}: ${untilText(asked, first)}.`;
  const answer = answerOf(
    asked,
    view,
    title,
    more.length > 0
      ? [{ kind: 'list', heading: 'Also', items: more.map((each) => holdingLine(asked, each)) }]
      : [],
  );
  return {
    ...answer,
    cautions: [`A date counts only if it was held at 41 °F (5 °C) or below. ${LOCAL_CODE}`],
  };
}

async function noneLeft(asked: Asked, desk: Desk, which: Which, view: StockView): Promise<Answer> {
  if (which.code !== undefined) {
    const batch = await batchCalled(desk, which.code);
    return answerOf(
      asked,
      view,
      `0 left of ${batch.code}, ${batch.recipeTitle.toLowerCase()} made ${sayDate(batch.madeDate)}.`,
      [],
    );
  }
  throw new Problem(
    'not_found',
    'None of those are in stock.',
    sayInstead(await desk.ledger.holdings(), {}, asked.request.nowMs, asked.kitchen.book),
  );
}

/** The batch to take now, and the ones after it. */
export function firstOutAnswer(asked: Asked, view: StockView): Answer {
  const [first, ...more] = view.usable;
  const title = first
    ? `${piecesOf(first.pieces, first.batch)} first: ${holdingLine(asked, first).split(': ').slice(1).join(': ')}.`
    : 'Nothing can be served now.';
  return answerOf(
    asked,
    view,
    title,
    more.length > 0
      ? [{ kind: 'steps', heading: 'Then', items: more.slice(0, 8).map((each) => holdingLine(asked, each)) }]
      : [],
  );
}

/** How long a recipe keeps, and until when if it were made today. */
export async function shelfLife(asked: Asked): Promise<Answer> {
  const { book } = asked.kitchen;
  const recipe = await recipeMeant(asked);
  if (!recipe)
    throw new Problem('needs_more', 'How long does what keep?', 'Name it, like "how long do oat bars keep".');
  const today = dateOf(asked.request.nowMs, book.settings.timeZone);
  const isCold = recipe.storage !== 'room';
  const days = isCold
    ? Math.min(recipe.shelfLifeDays, book.settings.mostDays, MOST_DAYS)
    : recipe.shelfLifeDays;
  const last = isCold ? lastDay(today, days, []) : addDays(today, days - 1);
  const how = isCold
    ? 'at 41 °F (5 °C) or below; the day made is day 1, at most 7 days (FDA Food Code model 3-501.17)'
    : "dry and closed, by this kitchen's card; the day made is day 1";
  return {
    title: `${days} days: ${recipe.title.toLowerCase()} made today, use by ${sayDate(last)}.`,
    sections: [
      {
        kind: 'text',
        text: `Held ${how}. An ingredient opened earlier can shorten it; frozen days are not counted.`,
      },
    ],
    cautions: isCold ? [LOCAL_CODE] : [],
    next: [{ label: 'stock', says: 'stock' }],
    audience: 'channel',
    data: { recipe: recipe.id, days, madeToday: today, useBy: last, storage: recipe.storage },
  };
}
