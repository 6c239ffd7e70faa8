import type { Holding } from '../../../kitchen/stock/ledger.ts';
import { usableAt } from '../../../kitchen/stock/usable.ts';
import { type StockView, sumOf } from '../../../kitchen/stock/view.ts';
import { clockTime, instantOf, sayDate } from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answer } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { comingDay } from '../../stock/when.ts';
import { counted, holdingLine } from '../../stock/words.ts';
import { answerOf } from './overview.ts';

/** "enough for 30?": people times pieces each, against what can be served now or on the day named. */
export function enough(asked: Asked, view: StockView, holdings: readonly Holding[]): Answer {
  const people = asked.slots.quantity;
  if (typeof people !== 'number' || !(people > 0)) {
    throw new Problem(
      'needs_more',
      'Enough for how many?',
      'Write a number, like "enough oat bars for 30?".',
    );
  }
  const { settings } = asked.kitchen.book;
  const day = comingDay(asked, asked.slots.when);
  const laterMs = day && instantOf({ date: day, time: clockTime('12:00') }, settings.timeZone);
  const isLater = laterMs !== undefined && laterMs > asked.request.nowMs;
  const counting = isLater
    ? holdings.filter((holding) => usableAt(holding, laterMs, settings.timeZone))
    : view.usable;
  const need = Math.ceil(people * settings.piecesPerPerson);
  const there = sumOf(counting);
  const when = isLater && day ? ` on ${sayDate(day)}` : '';
  const each = settings.piecesPerPerson === 1 ? '' : ` at ${settings.piecesPerPerson} each`;
  const verdict = there >= need ? `Yes, ${there - need} over` : `No, ${need - there} short`;
  const answer = answerOf(
    asked,
    view,
    `${verdict}: ${counted(there, 'piece')} can be served${when}, ${need} needed for ${people}${each}.`,
    counting.length > 0
      ? [{ kind: 'list', items: counting.slice(0, 8).map((holding) => holdingLine(asked, holding)) }]
      : [],
  );
  return { ...answer, data: { ...answer.data, people, needed: need, there, enough: there >= need } };
}
