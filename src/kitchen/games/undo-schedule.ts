import { Problem } from '../../nutrition/problem.ts';
import type { LedgerEvent, LedgerView } from '../stock/ledger.ts';
import type { CalendarSource, Game } from './game.ts';
import { isSameGame } from './same-game.ts';
import { gameName } from './say-game.ts';
import type { BeforeAfter, ScheduleEntry } from './schedule-entry.ts';

/** What taking back an entry did to the games and calendars. */
export interface ScheduleUndone {
  /** Each game as it was until now and as it is again; no `after` when it is off the list. */
  readonly games: readonly BeforeAfter<Game>[];
  readonly calendars: readonly BeforeAfter<CalendarSource>[];
  /** Games that somebody or a calendar changed since: they stay as they are. */
  readonly left: readonly Game[];
}

/**
 * Works out how to take back an event that changed games or a calendar. A game comes back as it was before, unless it
 * was changed since. What its calendar says of it stays known, so that the next reading does not bring the change
 * back; as after a change by hand, only a new word of the calendar does.
 * @throws Problem `not_possible` when all of it was changed since.
 */
export async function scheduleReversal(
  ledger: LedgerView,
  event: LedgerEvent,
  nowMs: number,
): Promise<{ readonly entry: ScheduleEntry; readonly undone: ScheduleUndone }> {
  const { games, calendars } = await ledger.scheduleChangesOf(event.id);
  const now = new Map((await ledger.gamesById(games.map(({ id }) => id))).map((game) => [game.id, game]));
  const [calendar] = calendars;
  const staysRead = calendar?.before !== undefined && calendar.after?.url !== undefined;
  const put: Game[] = [];
  const remove: string[] = [];
  const back: BeforeAfter<Game>[] = [];
  const left: Game[] = [];
  for (const { id, before, after } of games) {
    const current = now.get(id);
    if (!isSameGame(current, after)) {
      left.push(current ?? (after as Game));
      continue;
    }
    const again = restored(before, current, staysRead, nowMs);
    if (again) put.push(again);
    else remove.push(id);
    back.push({ id, ...(current ? { before: current } : {}), ...(again ? { after: again } : {}) });
  }
  const [first] = left;
  if (first && back.length === 0 && !calendar) throw changedSince(first, left.length);
  if (calendar?.after && !calendar.before) await refuseReadSince(ledger, calendar.after, games.length, left);
  return {
    entry: { put, remove, ...(await calendarBack(ledger, calendar)) },
    undone: { games: back, calendars: calendars.map(turned), left },
  };
}

/** A game that a calendar goes on listing is kept as cancelled: removed, the next reading would bring it back as new. */
function restored(
  before: Game | undefined,
  current: Game | undefined,
  staysRead: boolean,
  nowMs: number,
): Game | undefined {
  if (!before)
    return staysRead && current ? { ...current, status: 'cancelled', updatedMs: nowMs } : undefined;
  if (!current || before.calendarId !== current.calendarId) return { ...before, updatedMs: nowMs };
  const { sequence, stampMs, calendarSays, missingMs } = current;
  const { stampMs: _stamp, calendarSays: _says, missingMs: _missing, ...rest } = before;
  return {
    ...rest,
    sequence,
    ...(stampMs === undefined ? {} : { stampMs }),
    ...(calendarSays === undefined ? {} : { calendarSays }),
    ...(missingMs === undefined ? {} : { missingMs }),
    updatedMs: nowMs,
  };
}

/** A new calendar goes, a forgotten one comes back; one that was only read again stays as it was read. */
async function calendarBack(
  ledger: LedgerView,
  change: BeforeAfter<CalendarSource> | undefined,
): Promise<ScheduleEntry> {
  if (!change) return {};
  if (!change.before) return { removeCalendar: change.id };
  if (change.after || (await ledger.calendarNow(change.id)).calendar) return {};
  return { putCalendar: change.before };
}

/** A first import is taken back whole or not at all: what came of the calendar later must not stay without it. */
async function refuseReadSince(
  ledger: LedgerView,
  { id, name }: CalendarSource,
  count: number,
  left: readonly Game[],
): Promise<void> {
  if (left.length === 0 && (await ledger.calendarNow(id)).games.length <= count) return;
  throw new Problem(
    'not_possible',
    `Games of ${name} came or changed since it was imported, so the import is not undone.`,
    `To drop it with all its games, say "forget calendar ${name}".`,
  );
}

const turned = ({ id, before, after }: BeforeAfter<CalendarSource>): BeforeAfter<CalendarSource> => ({
  id,
  ...(after ? { before: after } : {}),
  ...(before ? { after: before } : {}),
});

function changedSince(game: Game, count: number): Problem {
  const what = count === 1 ? `${gameName(game)} was` : `All ${count} games were`;
  return new Problem(
    'not_possible',
    `${what} changed since, by somebody else or by the calendar, so what you entered is not undone.`,
    'Say how the game is: "game saturday is now 2pm", "cancel saturday game", "44 people saturday".',
  );
}
