import type { Game, GameBook, GameBooks } from '../kitchen/games/game.ts';
import type { Database } from './database.ts';
import { lockWorkspace } from './dialect/lock-workspace.ts';
import { calendarOf, gameOf } from './game-rows.ts';
import { putCalendar, putGames } from './game-writes.ts';
import { insertOnce } from './reminders/plan.ts';
import { withStoreProblems } from './store-problem.ts';

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

    put: (games) => db.transaction().execute((trx) => putGames(trx, workspace, games)),

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

    putCalendar: (calendar) =>
      db.transaction().execute(async (trx) => {
        await lockWorkspace(trx, engine, workspace);
        await putCalendar(trx, workspace, calendar);
      }),

    putRead: ({ calendar, games, news }, nowMs) =>
      db.transaction().execute(async (trx) => {
        await lockWorkspace(trx, engine, workspace);
        await putGames(trx, workspace, games);
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
