import { createHash } from 'node:crypto';
import { addDays, type CalendarDate, daysBetween, instantOf, wallTimeOf } from '../time/zone.ts';
import type { CalendarReading, ToldGame } from './calendar/reading.ts';
import { compareVersions, keyOf, wordOf } from './calendar/versions.ts';
import type { Game, GameBefore } from './game.ts';

export type GameChange = 'added' | 'moved' | 'cancelled' | 'restored' | 'changed';

export interface ChangedGame {
  readonly kind: GameChange;
  readonly game: Game;
  readonly before?: Game;
}

export interface MergedGames {
  /** What must be written: new, changed and newly missing games. */
  readonly put: readonly Game[];
  readonly changes: readonly ChangedGame[];
  readonly unchanged: number;
  /** Games to come that the calendar no longer lists; they stay planned until somebody cancels them. */
  readonly missing: readonly Game[];
  /** Those of them that it listed the last time. */
  readonly newlyMissing: readonly Game[];
}

/**
 * Lays what a calendar says now over the games known from it. A version that is not older wins when it says something
 * else than the calendar said before; else what people changed by hand stays. A game to come that a whole reading no
 * longer lists is marked and reported, never dropped: feeds lose games and bring them back.
 * @param today games before it are past and are not missed.
 * @param typed games people typed: one the calendar now lists too becomes one with it, and keeps what was said of it.
 */
export function mergeGames(
  calendarId: string,
  known: readonly Game[],
  reading: Pick<CalendarReading, 'games' | 'complete'>,
  nowMs: number,
  today: CalendarDate,
  typed: readonly Game[] = [],
): MergedGames {
  const byKey = new Map(known.map((game) => [keyOf(game), game]));
  const put: Game[] = [];
  const changes: ChangedGame[] = [];
  const typedLeft = [...typed];
  let unchanged = 0;
  for (const told of reading.games) {
    const before = byKey.get(keyOf(told));
    byKey.delete(keyOf(told));
    const outcome = before
      ? updated(before, told, nowMs)
      : added(calendarId, told, nowMs, { typedLeft, games: reading.games });
    if (outcome.change) changes.push(outcome.change);
    else unchanged += 1;
    if (outcome.game !== before) put.push(outcome.game);
  }
  const missing = reading.complete && reading.games.length > 0 ? missed([...byKey.values()], today) : [];
  const newlyMissing = missing
    .filter(({ missingMs }) => missingMs === undefined)
    .map((game) => ({ ...game, missingMs: nowMs }));
  put.push(...newlyMissing);
  return { put, changes, unchanged, missing, newlyMissing };
}

interface Outcome {
  readonly game: Game;
  readonly change?: ChangedGame;
}

interface Typed {
  /** Those that no game of this reading is one with yet. */
  readonly typedLeft: Game[];
  readonly games: readonly ToldGame[];
}

function added(calendarId: string, told: ToldGame, nowMs: number, typed: Typed): Outcome {
  const twin = twinOf(told, typed);
  if (twin) typed.typedLeft.splice(typed.typedLeft.indexOf(twin), 1);
  const own = createHash('sha256')
    .update(`${calendarId}\n${keyOf(told)}`)
    .digest('hex')
    .slice(0, 20);
  const kept = twin ? saidByPeople(twin) : {};
  const game: Game = {
    ...told,
    ...kept,
    id: twin?.id ?? own,
    calendarId,
    updatedMs: nowMs,
    calendarSays: wordOf(told),
  };
  return { game, change: { kind: 'added', game, ...(twin ? { before: twin } : {}) } };
}

/** One typed game is one listed game: of two against the opponent of the day, the one at its time. */
function twinOf(told: ToldGame, { typedLeft, games }: Typed): Game | undefined {
  const twins = typedLeft.filter((game) => isSame(game, told));
  const isListed = (twin: Game): boolean =>
    games.some((each) => each.time === twin.time && isSame(twin, each));
  return twins.find(({ time }) => time === told.time) ?? twins.find((twin) => !isListed(twin));
}

/** The same day against the same opponent, in the same sport as far as that was said. */
function isSame(typed: Game, told: ToldGame): boolean {
  if (typed.date !== told.date || typed.opponent === undefined || told.opponent === undefined) return false;
  if (typed.opponent.toLowerCase() !== told.opponent.toLowerCase()) return false;
  return typed.sport === undefined || told.sport === undefined || told.sport.includes(typed.sport);
}

/** What a calendar does not know. */
function saidByPeople({
  people,
  recipeId,
  departsMs,
}: Game): Pick<Game, 'people' | 'recipeId' | 'departsMs'> {
  return {
    ...(people === undefined ? {} : { people }),
    ...(recipeId === undefined ? {} : { recipeId }),
    ...(departsMs === undefined ? {} : { departsMs }),
  };
}

function updated(before: Game, told: ToldGame, nowMs: number): Outcome {
  if (compareVersions(told, before) < 0) return { game: before };
  const { missingMs: _missing, ...listed } = before;
  const version = {
    sequence: told.sequence,
    ...(told.stampMs === undefined ? {} : { stampMs: told.stampMs }),
  };
  if (wordOf(told) === before.calendarSays) {
    const isSame = before.missingMs === undefined && compareVersions(told, before) === 0;
    return { game: isSame ? before : { ...listed, ...version } };
  }
  const game = withTold(listed, told, nowMs);
  return { game, change: { kind: kindOf(before, game), game, before } };
}

function withTold(before: Game, told: ToldGame, nowMs: number): Game {
  const { id, calendarId } = before;
  const departsMs = shiftedDeparture(before, told);
  const was = changedFrom(before, told, nowMs);
  return {
    ...told,
    id,
    ...(calendarId === undefined ? {} : { calendarId }),
    ...saidByPeople(before),
    ...(departsMs === undefined ? {} : { departsMs }),
    ...(was ? { was } : {}),
    updatedMs: nowMs,
    calendarSays: wordOf(told),
  };
}

/** What it was, when its day, time or standing changed; else what was remembered before. */
export function changedFrom(
  before: Game,
  after: Pick<Game, 'date' | 'time' | 'status'>,
  nowMs: number,
): GameBefore | undefined {
  const { date, time, status } = before;
  if (date === after.date && time === after.time && status === after.status) return before.was;
  return { date, ...(time === undefined ? {} : { time }), status, changedMs: nowMs };
}

/** A told departure keeps its distance to the game: as long before the start, or the same hour on the moved day. */
export function shiftedDeparture(
  before: Game,
  after: Pick<Game, 'date' | 'time' | 'timeZone'>,
): number | undefined {
  if (before.departsMs === undefined) return undefined;
  if (before.time !== undefined && after.time !== undefined) {
    const from = instantOf({ date: before.date, time: before.time }, before.timeZone);
    return before.departsMs + instantOf({ date: after.date, time: after.time }, after.timeZone) - from;
  }
  const wall = wallTimeOf(before.departsMs, after.timeZone);
  const date = addDays(wall.date, daysBetween(before.date, after.date));
  return instantOf({ date, time: wall.time }, after.timeZone);
}

export function kindOf(before: Game, after: Game): GameChange {
  if (before.status !== after.status) return after.status === 'cancelled' ? 'cancelled' : 'restored';
  const isMoved =
    before.date !== after.date || before.time !== after.time || before.timeZone !== after.timeZone;
  return isMoved ? 'moved' : 'changed';
}

const missed = (left: readonly Game[], today: CalendarDate): Game[] =>
  left.filter((game) => game.status === 'planned' && game.date >= today);
