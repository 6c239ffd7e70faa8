import type { Book } from '../../nutrition/book.ts';
import type { Holding } from '../stock/ledger.ts';
import type { CalendarDate } from '../time/zone.ts';
import type { Eaters } from './eaters.ts';

/** What a production plan is made from. */
export interface ProductionQuestion {
  readonly book: Book;
  readonly eaters: readonly Eaters[];
  /** The day of the game, in the kitchen's zone. */
  readonly date: CalendarDate;
  /** Everything is set and cut by then, epoch milliseconds. */
  readonly packAtMs: number;
  readonly nowMs: number;
  /** What somebody asked to be made; other recipes only for whom it cannot be made to suit. */
  readonly recipeId?: string;
  /** Recipes made here lately: familiar ones. */
  readonly madeLately: ReadonlySet<string>;
  /** What is held now; see `Ledger.holdings`. */
  readonly holdings: readonly Holding[];
  /** Pieces of a recipe, by id, that games before this day will take from stock. */
  readonly promised: ReadonlyMap<string, number>;
  /** Foods, by id, whose label changed and was not read since. */
  readonly openLabels: ReadonlySet<string>;
}
