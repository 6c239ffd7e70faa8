import { createHash, randomBytes } from 'node:crypto';
import type { CalendarDate, ClockTime } from '../time/zone.ts';
import type { Game, Side } from './game.ts';
import { changedFrom, shiftedDeparture } from './merge-games.ts';

/** What people may say of a game. */
export interface ToldInChat {
  readonly date?: CalendarDate;
  readonly time?: ClockTime;
  readonly sport?: string;
  readonly opponent?: string;
  readonly side?: Side;
  readonly people?: number;
  readonly recipeId?: string;
  readonly departsMs?: number;
}

/** A new game that somebody typed. */
export function newGame(
  told: ToldInChat & { readonly date: CalendarDate },
  timeZone: string,
  nowMs: number,
): Game {
  const id = createHash('sha256').update(randomBytes(16)).digest('hex').slice(0, 20);
  const { opponent, sport } = told;
  const side = told.side ?? (opponent === undefined ? undefined : 'home');
  const versus = opponent === undefined ? 'Game' : `${side === 'away' ? 'at' : 'vs'} ${opponent}`;
  return {
    id,
    uid: `${id}@batchbell`,
    sequence: 0,
    title: sport === undefined ? versus : `${sport} ${versus}`,
    ...told,
    ...(side === undefined ? {} : { side }),
    timeZone,
    status: 'planned',
    updatedMs: nowMs,
  };
}

/** A game after somebody changed it; a departure that was told keeps its distance to the start. */
export function changedGame(before: Game, told: ToldInChat, nowMs: number): Game {
  const moved = { ...before, ...told, updatedMs: nowMs };
  const departsMs = told.departsMs ?? shiftedDeparture(before, moved);
  return {
    ...moved,
    ...withWas(before, moved, nowMs),
    ...(departsMs === undefined ? {} : { departsMs }),
  };
}

/** A game that is off, or on again. */
export function withStatus(before: Game, status: Game['status'], nowMs: number): Game {
  const after = { ...before, status, updatedMs: nowMs };
  return { ...after, ...withWas(before, after, nowMs) };
}

function withWas(before: Game, after: Game, nowMs: number): Pick<Game, 'was'> {
  const was = changedFrom(before, after, nowMs);
  return was ? { was } : {};
}
