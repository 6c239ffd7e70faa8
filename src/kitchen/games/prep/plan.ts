import type { Book } from '../../../nutrition/book.ts';
import type { Holding } from '../../stock/ledger.ts';
import type { CalendarDate } from '../../time/zone.ts';
import type { Game } from '../game.ts';

export interface PlanningDesk {
  readonly games: readonly Game[];
  /** What is held now; see `Ledger.holdings`. */
  readonly holdings: readonly Holding[];
  readonly book: Book;
  readonly nowMs: number;
}

/** What one game takes out of the kitchen, and when. */
export interface Pack {
  readonly gameId: string;
  readonly pieces: number;
  /** Epoch milliseconds. */
  readonly packAtMs: number;
}

/** One batch to make (or nothing, when stock covers it) for one or more games. Instants are epoch milliseconds. */
export interface PrepPlan {
  /** Earliest game first. */
  readonly gameIds: readonly string[];
  /** Absent when neither the game nor the kitchen says what is made; `conflicts` then asks. */
  readonly recipeId?: string;
  /** People times pieces each plus the spare share; absent when nobody said how many people. */
  readonly wanted?: number;
  readonly fromStock: number;
  /** What is made: whole slabs, 0 when stock covers it. */
  readonly pieces: number;
  readonly slabs: number;
  readonly prepAtMs: number;
  /** Starting later than this, it is not set when it is packed. */
  readonly latestStartMs: number;
  /** When the first game is packed. */
  readonly packAtMs: number;
  readonly packs: readonly Pack[];
  /** Made, set and cut by then. */
  readonly readyByMs: number;
  /** Last day of what is made; absent for what is not date-marked or when nothing is made. */
  readonly useBy?: CalendarDate;
  /** Why the plan is what it is, one short line each. */
  readonly reasons: readonly string[];
  /** What does not fit or is not known, and what to do about it. */
  readonly conflicts: readonly string[];
}
