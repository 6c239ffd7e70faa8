import type { Kysely } from 'kysely';
import type { CalendarSource, Game } from '../kitchen/games/game.ts';
import { ReadMeanwhile } from '../kitchen/games/read-meanwhile.ts';
import { calendarRow, gameRow } from './game-rows.ts';
import { inParts } from './in-parts.ts';
import type { Schema } from './schema.ts';

/** Rows a statement: both engines limit the values of one statement, SQLite to 32,766. */
const ROWS_AT_ONCE = 500;

/**
 * Writes a calendar whole. What it says of being read must follow the last reading: who read from an older state gets
 * `ReadMeanwhile` and nothing is written.
 */
export async function putCalendar(
  db: Kysely<Schema>,
  workspace: string,
  calendar: CalendarSource,
): Promise<void> {
  const { workspace: _w, id: _id, ...changed } = calendarRow(workspace, calendar);
  const known = await db
    .selectFrom('calendars')
    .select('reads')
    .where('workspace', '=', workspace)
    .where('id', '=', calendar.id)
    .executeTakeFirst();
  if (known && known.reads >= (calendar.reads ?? 0)) throw new ReadMeanwhile();
  await db
    .insertInto('calendars')
    .values(calendarRow(workspace, calendar))
    .onConflict((conflict) => conflict.columns(['workspace', 'id']).doUpdateSet(changed))
    .execute();
}

export async function putGames(db: Kysely<Schema>, workspace: string, games: readonly Game[]): Promise<void> {
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

export async function removeGames(
  db: Kysely<Schema>,
  workspace: string,
  ids: readonly string[],
): Promise<void> {
  await inParts(ids, async (part) => {
    await db.deleteFrom('games').where('workspace', '=', workspace).where('id', 'in', part).execute();
    return [];
  });
}
