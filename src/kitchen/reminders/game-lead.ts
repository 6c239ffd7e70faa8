import type { Game } from '../games/game.ts';
import { addDays, type ClockTime, instantOf } from '../time/zone.ts';
import { OWN_HELPS_MS } from './planner/rules.ts';
import type { Reminder } from './reminder.ts';
import type { NewReminder } from './reminder-book.ts';

/** How long before which game a person's own reminder comes: minutes before the start, or a time some days before. */
export interface GameLead {
  readonly gameId: string;
  readonly minutes?: number;
  readonly days?: number;
  /** By the kitchen's clock, with `days`. */
  readonly time?: ClockTime;
}

/** The lead as a reminder keeps it, and back. */
export const leadAbout = ({ gameId, minutes, days, time }: GameLead): Reminder['about'] => ({
  gameId,
  ...(minutes === undefined ? {} : { minutesBefore: minutes }),
  ...(days === undefined ? {} : { daysBefore: days }),
  ...(time === undefined ? {} : { clock: time }),
});

export function leadOf({
  gameId,
  minutesBefore,
  daysBefore,
  clock,
}: Reminder['about']): GameLead | undefined {
  if (typeof gameId !== 'string') return undefined;
  return {
    gameId,
    ...(typeof minutesBefore === 'number' ? { minutes: minutesBefore } : {}),
    ...(typeof daysBefore === 'number' ? { days: daysBefore } : {}),
    ...(typeof clock === 'string' ? { time: clock as ClockTime } : {}),
  };
}

/** When it comes as the game stands; `undefined` while the game is off, or its time is not known and counts. */
export function dueBefore(
  game: Game | undefined,
  { minutes, days, time }: GameLead,
  zone: string,
): Pick<NewReminder, 'dueMs' | 'helpsUntilMs' | 'wall'> | undefined {
  if (game?.status !== 'planned') return undefined;
  const startMs =
    game.time === undefined ? undefined : instantOf({ date: game.date, time: game.time }, game.timeZone);
  const until = (dueMs: number): number =>
    Math.min(dueMs + OWN_HELPS_MS, startMs ?? Number.POSITIVE_INFINITY);
  if (minutes !== undefined) {
    if (startMs === undefined) return undefined;
    const dueMs = startMs - minutes * 60_000;
    return { dueMs, helpsUntilMs: until(dueMs) };
  }
  if (days === undefined || time === undefined) return undefined;
  const wall = { date: addDays(game.date, -days), time, zone };
  const dueMs = instantOf(wall, zone);
  return { dueMs, helpsUntilMs: until(dueMs), wall };
}
