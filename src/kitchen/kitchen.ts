import type { Book } from '../nutrition/book.ts';

/** Where "now" comes from; injected so that tests and `--now` decide. Epoch milliseconds. */
export interface Clock {
  nowMs(): number;
}

/** All that a command may ask: the book it cooks from and the clock it lives by. */
export interface Kitchen {
  readonly book: Book;
  readonly clock: Clock;
}
