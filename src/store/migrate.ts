import { type Kysely, Migrator, sql } from 'kysely';
import { Problem } from '../nutrition/problem.ts';
import type { Engine } from './database.ts';
import { MIGRATIONS } from './migrations/index.ts';
import type { Schema } from './schema.ts';

/**
 * Brings the database to this program's schema. Several instances may call it at once: the first one in works, the
 * others wait and find nothing to do. A schema from a newer program is refused untouched.
 */
export async function migrate(db: Kysely<Schema>, engine: Engine): Promise<void> {
  const done = await migrationsDone(db, engine);
  refuseNewer(done);
  // The usual start. The migrator would first look through every schema of the database, which is slow and fails when
  // a neighbor's schema is dropped meanwhile.
  if (Object.keys(MIGRATIONS).every((name) => done.has(name))) return;
  const ownSchema = engine === 'postgres' ? await currentSchema(db) : undefined;
  const migrator = new Migrator({
    db,
    provider: { getMigrations: async () => ({ ...MIGRATIONS }) },
    // Numbers are handed out before the work is done, so that they may land in another order.
    allowUnorderedMigrations: true,
    ...(ownSchema === undefined ? {} : { migrationTableSchema: ownSchema }),
  });
  const { error } = await migrator.migrateToLatest();
  if (error) throw error;
}

/** One PostgreSQL database may hold several kitchens, each in a schema: a neighbor's tables are not ours. */
async function currentSchema(db: Kysely<Schema>): Promise<string | undefined> {
  const { rows } = await sql<{ name: string | null }>`select current_schema() as name`.execute(db);
  return rows[0]?.name ?? undefined;
}

async function migrationsDone(db: Kysely<Schema>, engine: Engine): Promise<ReadonlySet<string>> {
  const table =
    engine === 'postgres'
      ? sql<{ name: string | null }>`select to_regclass('kysely_migration')::text as name`
      : sql<{
          name: string;
        }>`select name from sqlite_master where type = 'table' and name = 'kysely_migration'`;
  const there = (await table.execute(db)).rows[0]?.name;
  if (!there) return new Set();
  const { rows } = await sql<{ name: string }>`select name from kysely_migration`.execute(db);
  return new Set(rows.map(({ name }) => name));
}

function refuseNewer(done: ReadonlySet<string>): void {
  const unknown = [...done].filter((name) => !(name in MIGRATIONS));
  if (unknown.length === 0) return;
  throw new Problem(
    'unavailable',
    `This database was written by a newer Batchbell (it has ${unknown.sort().join(', ')}).`,
    'Start the newer version, or point DATABASE_URL or --db at another database.',
  );
}
