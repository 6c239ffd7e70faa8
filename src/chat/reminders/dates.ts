import type { ComposingDesk } from '../../kitchen/reminders/composer.ts';
import type { Reminder } from '../../kitchen/reminders/reminder.ts';
import { sayHolding } from '../../kitchen/stock/choose.ts';
import type { Holding } from '../../kitchen/stock/ledger.ts';
import { mustGo, standingOf } from '../../kitchen/stock/usable.ts';
import { dateOf, sayInstant } from '../../kitchen/time/zone.ts';
import { counted, piecesOf } from '../stock/words.ts';
import { list, type Told } from './frame.ts';

const LOCAL = 'The local health code governs; when in doubt, throw it out.';

/** Last day today and still there. */
export function expiring({ state }: ComposingDesk): Told | undefined {
  const { holdings, nowMs, book } = state;
  const today = dateOf(nowMs, book.settings.timeZone);
  const last = holdings.filter((holding) => holding.state !== 'out' && holding.useBy === today);
  if (last.length === 0) return undefined;
  return {
    title: `Last day today: ${pieces(last)}. Serve them first, or freeze them today.`,
    sections: list(last.map((holding) => sayHolding(holding, nowMs, book))),
    says: ['stock'],
    data: { pieces: count(last) },
  };
}

/** Past its date and still there two hours after the morning check. */
export function expired({ state }: ComposingDesk): Told | undefined {
  const { holdings, nowMs, book } = state;
  const gone = holdings.filter((holding) => mustGo(holding, nowMs, book.settings.timeZone));
  const first = gone[0];
  if (!first) return undefined;
  return {
    title: `Throw out now: ${pieces(gone)} past the date are still in stock.`,
    sections: list(gone.map((holding) => sayHolding(holding, nowMs, book))),
    cautions: [LOCAL],
    says: [`tossed all ${first.batch.code}`],
    data: { pieces: count(gone) },
  };
}

/** Out of the fridge: soon over, or over. */
export function stillOut(reminder: Reminder, { state }: ComposingDesk): Told | undefined {
  const { holdings, nowMs, book } = state;
  const zone = book.settings.timeZone;
  const holding = holdings.find(({ id }) => id === reminder.about.holdingId);
  if (!holding || holding.discardAtMs === undefined) return undefined;
  const { batch, discardAtMs } = holding;
  const what = `${piecesOf(holding.pieces, batch)} (batch ${batch.code})`;
  const by = sayInstant(discardAtMs, zone);
  const over = standingOf(holding, nowMs, zone) === 'out_too_long';
  return {
    title: over
      ? `Throw out now: ${what}, out of the fridge too long.`
      : `Still out: ${what}. Eat by ${by}, then throw out.`,
    sections: over ? list([`Their time out ended ${by}.`]) : [],
    cautions: [over ? LOCAL : 'They do not go back into the fridge: the time out counts on.'],
    says: over ? [`tossed all ${batch.code}`] : [`served all ${batch.code}`],
    data: { batch: batch.code, pieces: holding.pieces, discardAtMs },
  };
}

const count = (holdings: readonly Holding[]): number =>
  holdings.reduce((sum, holding) => sum + holding.pieces, 0);

function pieces(holdings: readonly Holding[]): string {
  const [first] = holdings;
  const isOneKind = first && holdings.every(({ batch }) => batch.recipeTitle === first.batch.recipeTitle);
  return isOneKind ? piecesOf(count(holdings), first.batch) : counted(count(holdings), 'piece');
}
