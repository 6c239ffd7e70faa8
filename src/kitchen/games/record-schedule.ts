import { type Desk, type Doing, eventOf, recordedBefore } from '../stock/desk.ts';
import type { CalendarSource, Game } from './game.ts';
import type { ImportDesk, KeepReading } from './import-calendar.ts';
import { isSameGame } from './same-game.ts';
import type { ScheduleEntry } from './schedule-entry.ts';

/** Writes a game somebody told, as an entry of that person; one that says nothing new is no entry. */
export async function recordGame(desk: Desk, doing: Doing, game: Game, before?: Game): Promise<void> {
  if (before && isSameGame(before, game)) return;
  await record(desk, 'game', doing, { put: [game] });
}

/** A calendar is forgotten with its games, as an entry of whoever asked for it. */
export const recordForgotten = (
  desk: Desk,
  doing: Doing,
  calendar: CalendarSource,
  games: readonly Game[],
): Promise<void> =>
  record(desk, 'calendar', doing, { remove: games.map(({ id }) => id), removeCalendar: calendar.id });

/** Keeps an import as an entry of whoever asked for it; one that brought nothing new is only noted as read. */
export const recordingImport =
  (desk: Desk, doing: Doing): KeepReading =>
  async ({ games: book, nowMs }: ImportDesk, read, before) => {
    if (before && read.games.length === 0) await book.putRead(read, nowMs);
    else await record(desk, 'calendar', doing, { put: read.games, putCalendar: read.calendar });
  };

async function record(
  desk: Desk,
  kind: 'game' | 'calendar',
  doing: Doing,
  schedule: ScheduleEntry,
): Promise<void> {
  await desk.ledger.write(async (ledger) => {
    if (await recordedBefore(ledger, doing.requestKey)) return;
    await ledger.append({ event: eventOf(ledger, desk, kind, doing), schedule });
  });
}
