import type { Game } from '../game.ts';

/** One thing wrong in a calendar, told so that its keeper can mend it. */
export interface CalendarProblem {
  readonly line: number;
  readonly message: string;
  readonly hint: string;
}

/** A game as one calendar tells it; the kitchen's own id and what people add come when it is merged. */
export type ToldGame = Omit<
  Game,
  | 'id'
  | 'calendarId'
  | 'updatedMs'
  | 'was'
  | 'missingMs'
  | 'calendarSays'
  | 'people'
  | 'recipeId'
  | 'departsMs'
>;

/** All that one file said. */
export interface CalendarReading {
  readonly name?: string;
  readonly games: readonly ToldGame[];
  readonly problems: readonly CalendarProblem[];
  /** What was assumed or left out, for people. */
  readonly notes: readonly string[];
  /** False when part of it could not be read: what is missing from it may still be on. */
  readonly complete: boolean;
}

/** Whose calendar it is and what is taken for granted. */
export interface CalendarContext {
  /** File name or address, a last hint at the sport. */
  readonly source: string;
  /** The kitchen's zone, for floating times. */
  readonly timeZone: string;
  /** The home team as the kitchen's settings name it. */
  readonly team: string;
  readonly nowMs: number;
}
