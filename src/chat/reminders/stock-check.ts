import type { ComposingDesk } from '../../kitchen/reminders/composer.ts';
import { firstOut, sayHolding } from '../../kitchen/stock/choose.ts';
import type { Holding } from '../../kitchen/stock/ledger.ts';
import { lastsUntil, mustGo, standingOf } from '../../kitchen/stock/usable.ts';
import { addDays, dateOf } from '../../kitchen/time/zone.ts';
import { list, type Told } from './frame.ts';

/** Fits a phone screen; the rest is counted and "stock" shows it. */
const MOST_LINES = 6;

/** The morning check: what must go, what to use first, what is there, what is below par. */
export function stockCheck({ state }: ComposingDesk): Told {
  const { book, nowMs, holdings } = state;
  const zone = book.settings.timeZone;
  const today = dateOf(nowMs, zone);
  const gone = holdings.filter((holding) => mustGo(holding, nowMs, zone));
  const kept = firstOut(holdings.filter((holding) => !gone.includes(holding)));
  const lastDay = kept.filter(
    (holding) => lastsUntil(holding, today) || lastsUntil(holding, addDays(today, 1)),
  );
  const rest = kept.filter((holding) => !lastDay.includes(holding));
  const usable = kept.filter((holding) => standingOf(holding, nowMs, zone) === 'usable');
  const say = (shown: readonly Holding[]) =>
    cutList(shown.map((holding) => sayHolding(holding, nowMs, book)));
  const low = belowPar(usable, state);
  return {
    title: titleOf(sum(usable), sum(gone), sum(lastDay)),
    sections: [
      ...list(say(gone), 'Throw out now'),
      ...list(say(lastDay), 'Use first: last day today or tomorrow'),
      ...list(say(rest), 'Also there'),
      ...list(low, 'Below par'),
    ],
    says: ['stock', ...(gone[0] ? [`tossed all ${gone[0].batch.code}`] : [])],
    data: { usablePieces: sum(usable), throwOutPieces: sum(gone), lastDayPieces: sum(lastDay) },
  };
}

function titleOf(usable: number, gone: number, lastDay: number): string {
  const parts = [
    ...(gone > 0 ? [`${gone} to throw out`] : []),
    ...(lastDay > 0 ? [`${lastDay} to use first`] : []),
  ];
  const there = usable === 0 ? 'nothing ready to serve' : `${usable} ready to serve`;
  return `Stock check: ${[there, ...parts].join(', ')}.`;
}

function belowPar(usable: readonly Holding[], { book }: ComposingDesk['state']): string[] {
  return [...book.settings.par].flatMap(([recipeId, par]) => {
    const there = sum(usable.filter((holding) => holding.batch.recipeId === recipeId));
    const title = book.recipes.get(recipeId)?.title ?? recipeId;
    return there < par ? [`${title}: ${there} of ${par}`] : [];
  });
}

function cutList(lines: readonly string[]): string[] {
  if (lines.length <= MOST_LINES) return [...lines];
  return [...lines.slice(0, MOST_LINES), `and ${lines.length - MOST_LINES} more: ask "stock"`];
}

const sum = (holdings: readonly Holding[]): number =>
  holdings.reduce((pieces, holding) => pieces + holding.pieces, 0);
