import type { Which } from '../../../kitchen/stock/choose.ts';
import { lastsUntil } from '../../../kitchen/stock/usable.ts';
import { belowPar, type StockView, sumOf } from '../../../kitchen/stock/view.ts';
import { sayDate } from '../../../kitchen/time/zone.ts';
import type { Answer, Section } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { comingDay } from '../../stock/when.ts';
import { holdingLine, LOCAL_CODE } from '../../stock/words.ts';
import { answerOf, parText } from './overview.ts';

const lines = (asked: Asked, holdings: StockView['usable'], heading?: string): Section[] =>
  holdings.length > 0
    ? [
        {
          kind: 'list',
          ...(heading === undefined ? {} : { heading }),
          items: holdings.map((holding) => holdingLine(asked, holding)),
        },
      ]
    : [];

/** "what must be thrown out", "should I toss the bars from monday". */
export function mustThrowOut(asked: Asked, view: StockView, which: Which): Answer {
  const count = sumOf(view.mustGo);
  const rest = [...view.usable, ...view.setting];
  const isNamed = Object.keys(which).length > 0;
  const title =
    count > 0
      ? `Throw out ${count} now: ${[...new Set(view.mustGo.map(({ batch }) => batch.code))].join(', ')}.`
      : `0 are past their date${isNamed ? ' among those' : ''}.`;
  const answer = answerOf(asked, view, title, [
    ...lines(asked, view.mustGo),
    ...(isNamed ? lines(asked, rest, 'In date') : []),
  ]);
  return {
    ...answer,
    cautions: [`No date on it, or warm for a time nobody knows: throw it out too. ${LOCAL_CODE}`],
  };
}

/** "what expires tomorrow"; without a day, today and tomorrow. */
export function expiring(asked: Asked, view: StockView): Answer {
  const day = comingDay(asked, asked.slots.when);
  const all = [...view.usable, ...view.setting];
  const due = day
    ? all.filter((holding) => lastsUntil(holding, day))
    : [...view.lastDayToday, ...view.lastDayTomorrow];
  const when = day ? `on ${sayDate(day)}` : 'today or tomorrow';
  return answerOf(asked, view, `${sumOf(due)} have their last day ${when}.`, [
    ...lines(asked, due),
    ...lines(asked, view.mustGo, 'Past already: throw out now'),
  ]);
}

/** What is below par, with how many are missing. */
export function low(asked: Asked, view: StockView): Answer {
  const found = belowPar(view);
  const title =
    found.length > 0
      ? `${found.length} below par: ${found.map((recipe) => parText(recipe)).join(', ')}.`
      : 'Nothing is below par.';
  const answer = answerOf(asked, view, title, []);
  const first = found[0];
  return {
    ...answer,
    next: first
      ? [`${(first.par ?? 0) - first.usable - first.setting} ${first.title}`].map((says) => ({
          label: says,
          says,
        }))
      : [],
    data: {
      ...answer.data,
      low: found.map((recipe) => ({
        recipe: recipe.recipeId,
        there: recipe.usable + recipe.setting,
        par: recipe.par,
      })),
    },
  };
}
