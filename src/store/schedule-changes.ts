import type { Kysely } from 'kysely';
import type { CalendarSource, Game } from '../kitchen/games/game.ts';
import type { BeforeAfter, ScheduleEntry, ScheduleView } from '../kitchen/games/schedule-entry.ts';
import { calendarOf, gameOf } from './game-rows.ts';
import { putCalendar, putGames, removeGames } from './game-writes.ts';
import { inParts } from './in-parts.ts';
import { present } from './present.ts';
import type { ScheduleChangesTable, Schema } from './schema.ts';

/** Rows a statement: both engines limit the values of one statement, SQLite to 32,766. */
const ROWS_AT_ONCE = 1_000;

/** Reads how games and calendars were before and after events. */
export function scheduleView(db: Kysely<Schema>, workspace: string): ScheduleView {
  return {
    async scheduleChangesOf(eventId) {
      const rows = await db
        .selectFrom('schedule_changes')
        .selectAll()
        .where('workspace', '=', workspace)
        .where('event_id', '=', eventId)
        .orderBy('item_id')
        .execute();
      return {
        games: rows.filter(({ kind }) => kind === 'game').map(beforeAfter<Game>),
        calendars: rows.filter(({ kind }) => kind === 'calendar').map(beforeAfter<CalendarSource>),
      };
    },
    gamesById: async (ids) => [...(await gamesNow(db, workspace, ids)).values()],
    async calendarNow(id) {
      const calendar = await calendarRowOf(db, workspace, id);
      const rows = await db
        .selectFrom('games')
        .selectAll()
        .where('workspace', '=', workspace)
        .where('calendar_id', '=', id)
        .execute();
      return { ...(calendar ? { calendar: calendarOf(calendar) } : {}), games: rows.map(gameOf) };
    },
  };
}

function beforeAfter<Thing>({ item_id: id, before, after }: ScheduleChangesTable): BeforeAfter<Thing> {
  return {
    id,
    ...present('before', before === null ? null : (JSON.parse(before) as Thing)),
    ...present('after', after === null ? null : (JSON.parse(after) as Thing)),
  };
}

/** Writes what an event changes, with how it was before. The caller holds the workspace's lock. */
export async function appendSchedule(
  db: Kysely<Schema>,
  workspace: string,
  eventId: string,
  { put = [], remove = [], putCalendar: calendar, removeCalendar }: ScheduleEntry,
): Promise<void> {
  const before = await gamesNow(db, workspace, [...put.map(({ id }) => id), ...remove]);
  await putGames(db, workspace, put);
  await removeGames(db, workspace, remove);
  const row = rowOf(workspace, eventId);
  const rows = [
    ...put.map((game) => row('game', game.id, before.get(game.id), game)),
    ...remove.map((id) => row('game', id, before.get(id), undefined)),
  ];
  const calendarId = calendar?.id ?? removeCalendar;
  if (calendarId !== undefined) {
    const was = await calendarRowOf(db, workspace, calendarId);
    if (calendar) await putCalendar(db, workspace, calendar);
    else {
      await db
        .deleteFrom('calendars')
        .where('workspace', '=', workspace)
        .where('id', '=', calendarId)
        .execute();
    }
    rows.push(row('calendar', calendarId, was && calendarOf(was), calendar));
  }
  for (let start = 0; start < rows.length; start += ROWS_AT_ONCE) {
    await db
      .insertInto('schedule_changes')
      .values(rows.slice(start, start + ROWS_AT_ONCE))
      .execute();
  }
}

const rowOf =
  (workspace: string, eventId: string) =>
  (kind: 'game' | 'calendar', id: string, before: unknown, after: unknown): ScheduleChangesTable => ({
    workspace,
    event_id: eventId,
    kind,
    item_id: id,
    before: before === undefined ? null : JSON.stringify(before),
    after: after === undefined ? null : JSON.stringify(after),
  });

const calendarRowOf = (db: Kysely<Schema>, workspace: string, id: string) =>
  db
    .selectFrom('calendars')
    .selectAll()
    .where('workspace', '=', workspace)
    .where('id', '=', id)
    .executeTakeFirst();

async function gamesNow(
  db: Kysely<Schema>,
  workspace: string,
  ids: readonly string[],
): Promise<ReadonlyMap<string, Game>> {
  const rows = await inParts(ids, (part) =>
    db.selectFrom('games').selectAll().where('workspace', '=', workspace).where('id', 'in', part).execute(),
  );
  return new Map(rows.map((row) => [row.id, gameOf(row)]));
}
