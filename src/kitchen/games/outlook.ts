import type { Book } from '../../nutrition/book.ts';
import type { Holding, Ledger } from '../stock/ledger.ts';
import { addDays, dateOf } from '../time/zone.ts';
import type { Game, GameBook } from './game.ts';
import { type PrepPlan, prepPlans } from './prep-plan.ts';

/** How far games are looked at: a season. */
const DAYS_AHEAD = 400;
/** People ask what was on last month, and what changed. */
const DAYS_BACK = 62;

/** What games see of the kitchen at one instant. */
export interface GamesDesk {
  readonly games: GameBook;
  readonly ledger: Ledger;
  readonly book: Book;
  readonly nowMs: number;
}

/** Games as known now, and what is made for them. */
export interface Outlook {
  readonly games: readonly Game[];
  readonly holdings: readonly Holding[];
  readonly plans: readonly PrepPlan[];
}

/** Reads the games from two months back to a season ahead, and plans what to make for those to come. */
export async function outlook({ games: gameBook, ledger, book, nowMs }: GamesDesk): Promise<Outlook> {
  const today = dateOf(nowMs, book.settings.timeZone);
  const games = await gameBook.between(addDays(today, -DAYS_BACK), addDays(today, DAYS_AHEAD));
  const holdings = await ledger.holdings();
  return { games, holdings, plans: prepPlans({ games, holdings, book, nowMs }) };
}

/** The same outlook after some games changed; nothing is read again. */
export function outlookWith(before: Outlook, changed: readonly Game[], book: Book, nowMs: number): Outlook {
  const byId = new Map(before.games.map((game) => [game.id, game]));
  for (const game of changed) byId.set(game.id, game);
  const games = [...byId.values()];
  return {
    games,
    holdings: before.holdings,
    plans: prepPlans({ games, holdings: before.holdings, book, nowMs }),
  };
}

/** The plan a game is part of. */
export const planOf = (plans: readonly PrepPlan[], gameId: string): PrepPlan | undefined =>
  plans.find(({ gameIds }) => gameIds.includes(gameId));
