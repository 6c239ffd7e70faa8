import type { CalendarSource, Game } from './game.ts';

/** What one event changes of the games and calendars. */
export interface ScheduleEntry {
  /** New and changed games, whole. */
  readonly put?: readonly Game[];
  /** Ids of games that are gone. */
  readonly remove?: readonly string[];
  readonly putCalendar?: CalendarSource;
  readonly removeCalendar?: string;
}

/** Something before and after an event; absent where it was not there. */
export interface BeforeAfter<Thing> {
  readonly id: string;
  readonly before?: Thing;
  readonly after?: Thing;
}

export interface ScheduleChanges {
  readonly games: readonly BeforeAfter<Game>[];
  readonly calendars: readonly BeforeAfter<CalendarSource>[];
}

/** What can be asked of the events that changed games and calendars. */
export interface ScheduleView {
  scheduleChangesOf(eventId: string): Promise<ScheduleChanges>;
  /** These games as they are now, as far as they are there. */
  gamesById(ids: readonly string[]): Promise<readonly Game[]>;
  /** A calendar as it is now, if it is there, with every game that came from it. */
  calendarNow(id: string): Promise<{ readonly calendar?: CalendarSource; readonly games: readonly Game[] }>;
}
