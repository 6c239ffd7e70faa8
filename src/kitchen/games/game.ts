import type { NewReminder } from '../reminders/reminder-book.ts';
import type { CalendarDate, ClockTime } from '../time/zone.ts';

export type Side = 'home' | 'away' | 'neutral';
export type GameStatus = 'planned' | 'cancelled';

/** What a game was before its last change, for people who ask what moved. */
export interface GameBefore {
  readonly date: CalendarDate;
  readonly time?: ClockTime;
  readonly status: GameStatus;
  readonly changedMs: number;
}

/**
 * A game as the kitchen knows it. The local date and time with their zone are what is true (laws about clocks can
 * change); the instant is worked out from them. A game whose time is not announced has a date only.
 */
export interface Game {
  readonly id: string;
  /** Absent for a game told in chat. */
  readonly calendarId?: string;
  /** RFC 5545 UID, and RECURRENCE-ID of one instance of a rule (its original start). */
  readonly uid: string;
  readonly recurrenceId?: string;
  readonly sequence: number;
  readonly stampMs?: number;
  readonly title: string;
  readonly sport?: string;
  readonly opponent?: string;
  readonly side?: Side;
  readonly place?: string;
  readonly date: CalendarDate;
  readonly time?: ClockTime;
  readonly timeZone: string;
  /** When the bus leaves, epoch milliseconds. */
  readonly departsMs?: number;
  /** People who travel or are fed. */
  readonly people?: number;
  /** What is made for it, when it is not the kitchen's usual. */
  readonly recipeId?: string;
  readonly status: GameStatus;
  readonly updatedMs: number;
  readonly was?: GameBefore;
  /** The calendar's last word on it, as one text to compare: while that stays, what people changed by hand stays. */
  readonly calendarSays?: string;
  /** Since when its calendar no longer lists it. It stays planned until somebody says otherwise. */
  readonly missingMs?: number;
}

/** A calendar that is read again: a file given once, or an address. */
export interface CalendarSource {
  readonly id: string;
  readonly name: string;
  readonly url?: string;
  readonly etag?: string;
  readonly readMs?: number;
  readonly nextReadMs?: number;
  /** What was wrong the last time it was read, for people. */
  readonly problem?: string;
  /** How often it was read, well or not. Each writing counts one on; one that does not was overtaken. */
  readonly reads?: number;
}

/** What one reading of a calendar leaves behind. */
export interface CalendarRead {
  readonly calendar: CalendarSource;
  /** New and changed games. */
  readonly games: readonly Game[];
  /** What people must be told of it. */
  readonly news?: NewReminder;
}

/** Games and calendars of one workspace. */
export interface GameBook {
  /** Games from one calendar date to another, both included, earliest first; cancelled ones too. */
  between(from: CalendarDate, to: CalendarDate): Promise<readonly Game[]>;
  get(id: string): Promise<Game | undefined>;
  /** Writes games whole, by id; all or none. */
  put(games: readonly Game[]): Promise<void>;
  ofCalendar(calendarId: string): Promise<readonly Game[]>;
  calendars(): Promise<readonly CalendarSource[]>;
  /** @throws ReadMeanwhile as `putRead` does. */
  putCalendar(calendar: CalendarSource): Promise<void>;
  /**
   * Writes a reading in one transaction: games, calendar and news, all or none, since a game whose change is kept is no
   * news at the next reading.
   * @throws ReadMeanwhile when somebody else read the calendar since; nothing is written.
   */
  putRead(read: CalendarRead, nowMs: number): Promise<void>;
  /** Forgets a calendar and every game that came from it. */
  removeCalendar(id: string): Promise<void>;
}

export type GameBooks = (workspace: string) => GameBook;
