import type { Book } from '../nutrition/book.ts';
import type { CalendarReach } from './games/calendar/reach.ts';
import type { GameBooks } from './games/game.ts';
import type { ReminderBooks } from './reminders/reminder-book.ts';
import type { Rosters } from './roster/roster.ts';
import type { ChoiceBooks } from './settings/choices.ts';
import type { Ledgers } from './stock/ledger.ts';

/** Where "now" comes from; injected so that tests and `--now` decide. Epoch milliseconds. */
export interface Clock {
  nowMs(): number;
}

/** All that a command may ask: the book it cooks from, the clock it lives by, and what it remembers. */
export interface Kitchen {
  readonly book: Book;
  readonly clock: Clock;
  /** Opened at the first use; a kitchen without a memory has `noMemory`. So are the three below. */
  readonly ledgers: Ledgers;
  readonly games: GameBooks;
  readonly reminders: ReminderBooks;
  readonly rosters: Rosters;
  /** Whether there is anything to remember from yet; never opens the memory. */
  readonly remembers: () => boolean;
  /** Absent where calendars can be neither fetched nor opened. */
  readonly calendars?: CalendarReach;
  /** Reads a roster file of this machine. Absent where strangers can write: they could ask for any file. */
  readonly rosterFile?: (path: string) => Promise<Uint8Array>;
  /** Absent where nobody may change the settings of the kitchen's folder. */
  readonly choices?: ChoiceBooks;
}
