import type { Book } from '../nutrition/book.ts';
import type { Ledgers } from './stock/ledger.ts';

/** Where "now" comes from; injected so that tests and `--now` decide. Epoch milliseconds. */
export interface Clock {
  nowMs(): number;
}

/** All that a command may ask: the book it cooks from, the clock it lives by, and what it remembers. */
export interface Kitchen {
  readonly book: Book;
  readonly clock: Clock;
  /** Opened at the first use; a kitchen without a memory has `noLedgers`. */
  readonly ledgers: Ledgers;
}
