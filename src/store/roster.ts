import type { Insertable, Kysely, Selectable } from 'kysely';
import type { PersonNeeds, Roster, Rosters, ToldBy } from '../kitchen/roster/roster.ts';
import type { Need } from '../nutrition/allergens.ts';
import type { Database } from './database.ts';
import { present } from './present.ts';
import type { PeopleTable, Schema } from './schema.ts';
import { withStoreProblems } from './store-problem.ts';

/** Rows a statement: both engines limit the values of one statement, SQLite to 32,766. */
const ROWS_AT_ONCE = 500;

/** The people kept in this database, one roster a workspace. */
export function rostersIn(database: Database): Rosters {
  return (workspace) => withStoreProblems(roster(database.db, workspace));
}

function roster(db: Kysely<Schema>, workspace: string): Roster {
  const people = () => db.selectFrom('people').selectAll().where('workspace', '=', workspace);
  return {
    async all() {
      const rows = await people().execute();
      return rows.map(personOf).sort((a, b) => (a.code < b.code ? -1 : 1));
    },

    async get(who) {
      const row =
        (await people().where('code', '=', who).executeTakeFirst()) ??
        (await people().where('member', '=', who).orderBy('code').executeTakeFirst());
      return row && personOf(row);
    },

    put: (given) =>
      db.transaction().execute(async (trx) => {
        for (let start = 0; start < given.length; start += ROWS_AT_ONCE) {
          await putSome(trx, workspace, given.slice(start, start + ROWS_AT_ONCE));
        }
      }),

    async remove(code) {
      const { numDeletedRows } = await db
        .deleteFrom('people')
        .where('workspace', '=', workspace)
        .where('code', '=', code)
        .executeTakeFirst();
      return numDeletedRows > 0n;
    },
  };
}

async function putSome(db: Kysely<Schema>, workspace: string, people: readonly PersonNeeds[]): Promise<void> {
  const rows = people.map((person) => personRow(workspace, person));
  const columns = Object.keys(rows[0] ?? {}).filter((name) => name !== 'workspace' && name !== 'code');
  await db
    .insertInto('people')
    .values(rows)
    .onConflict((conflict) =>
      conflict
        .columns(['workspace', 'code'])
        .doUpdateSet((eb) =>
          Object.fromEntries(columns.map((name) => [name, eb.ref(`excluded.${name}` as 'excluded.avoid')])),
        ),
    )
    .execute();
}

function personOf(row: Selectable<PeopleTable>): PersonNeeds {
  return {
    code: row.code,
    ...present('member', row.member),
    ...present('team', row.team),
    avoid: JSON.parse(row.avoid) as Need[],
    foods: JSON.parse(row.foods) as string[],
    likes: JSON.parse(row.likes) as string[],
    ...present('pieces', row.pieces),
    toldBy: row.told_by as ToldBy,
    updatedMs: row.updated_ms,
  };
}

function personRow(workspace: string, person: PersonNeeds): Insertable<PeopleTable> {
  return {
    workspace,
    code: person.code,
    member: person.member ?? null,
    team: person.team ?? null,
    avoid: JSON.stringify(person.avoid),
    foods: JSON.stringify(person.foods),
    likes: JSON.stringify(person.likes),
    pieces: person.pieces ?? null,
    told_by: person.toldBy,
    updated_ms: person.updatedMs,
  };
}
