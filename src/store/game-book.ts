import type { Kysely } from 'kysely';
import type { CalendarSource, Game, GameBook, GameBooks } from '../kitchen/games/game.ts';
import type { Database } from './database.ts';
import { lockWorkspace } from './dialect/lock-workspace.ts';
import { calendarOf, calendarRow, gameOf, gameRow } from './game-rows.ts';
import { insertOnce } from './reminders/plan.ts';
import type { Schema } from './schema.ts';
import { withStoreProblems } from './store-problem.ts';

/** Rows a statement: both engines limit the values of one statement, SQLite to 32,766. */
const ROWS_AT_ONCE = 500;

/** The games kept in this database, one book a workspace. */
export function gameBooksIn(database: Database): GameBooks {
  return (workspace) => withStoreProblems(gameBook(database, workspace));
}

function gameBook({ db, engine }: Database, workspace: string): GameBook {
  return {
    async between(from, to) {
      const rows = await db
        .selectFrom('games')
        .selectAll()
        .where('workspace', '=', workspace)
        .where('local_date', '>=', from)
        .where('local_date', '<=', to)
        .execute();
      return rows.map(gameOf).sort(earliestFirst);
    },

    async get(id) {
      const row = await db
        .selectFrom('games')
        .selectAll()
        .where('workspace', '=', workspace)
        .where('id', '=', id)
        .executeTakeFirst();
      return row && gameOf(row);
    },

    put: (games) => db.transaction().execute((trx) => putAll(trx, workspace, games)),

    async ofCalendar(calendarId) {
      const rows = await db
        .selectFrom('games')
        .selectAll()
        .where('workspace', '=', workspace)
        .where('calendar_id', '=', calendarId)
        .execute();
      return rows.map(gameOf).sort(earliestFirst);
    },

    async calendars() {
      const rows = await db
        .selectFrom('calendars')
        .selectAll()
        .where('workspace', '=', workspace)
        .orderBy('name')
        .execute();
      return rows.map(calendarOf);
    },

    putCalendar: (calendar) => putCalendar(db, workspace, calendar),

    putRead: ({ calendar, games, news }, nowMs) =>
      db.transaction().execute(async (trx) => {
        await lockWorkspace(trx, engine, workspace);
        await putAll(trx, workspace, games);
        await putCalendar(trx, workspace, calendar);
        if (news) await insertOnce(trx, workspace, news, nowMs);
      }),

    removeCalendar: (id) =>
      db.transaction().execute(async (trx) => {
        await trx
          .deleteFrom('games')
          .where('workspace', '=', workspace)
          .where('calendar_id', '=', id)
          .execute();
        await trx.deleteFrom('calendars').where('workspace', '=', workspace).where('id', '=', id).execute();
      }),
  };
}

async function putCalendar(db: Kysely<Schema>, workspace: string, calendar: CalendarSource): Promise<void> {
  const { workspace: _w, id: _id, ...changed } = calendarRow(workspace, calendar);
  await db
    .insertInto('calendars')
    .values(calendarRow(workspace, calendar))
    .onConflict((conflict) => conflict.columns(['workspace', 'id']).doUpdateSet(changed))
    .execute();
}

async function putAll(db: Kysely<Schema>, workspace: string, games: readonly Game[]): Promise<void> {
  for (let start = 0; start < games.length; start += ROWS_AT_ONCE) {
    await putSome(db, workspace, games.slice(start, start + ROWS_AT_ONCE));
  }
}

async function putSome(db: Kysely<Schema>, workspace: string, games: readonly Game[]): Promise<void> {
  const rows = games.map((game) => gameRow(workspace, game));
  const columns = Object.keys(rows[0] ?? {}).filter((name) => name !== 'workspace' && name !== 'id');
  await db
    .insertInto('games')
    .values(rows)
    .onConflict((conflict) =>
      conflict
        .columns(['workspace', 'id'])
        .doUpdateSet((eb) =>
          Object.fromEntries(columns.map((name) => [name, eb.ref(`excluded.${name}` as 'excluded.title')])),
        ),
    )
    .execute();
}

/** A game without a time stands before the others of its day; equal ones keep one order everywhere. */
function earliestFirst(a: Game, b: Game): number {
  return (
    compare(a.date, b.date) ||
    compare(a.time ?? '', b.time ?? '') ||
    compare(a.title, b.title) ||
    compare(a.id, b.id)
  );
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
