import { type Kysely, Migrator, sql } from 'kysely';
import { Problem } from '../nutrition/problem.ts';
import { MIGRATIONS } from './migrations/index.ts';
import type { Schema } from './schema.ts';

/**
 * Brings the database to this program's schema. Several instances may call it at once: the first one in works, the
 * others wait and find nothing to do. A schema from a newer program is refused untouched.
 */
export async function migrate(db: Kysely<Schema>): Promise<void> {
  await refuseNewerSchema(db);
  const migrator = new Migrator({ db, provider: { getMigrations: async () => ({ ...MIGRATIONS }) } });
  const { error } = await migrator.migrateToLatest();
  if (error) throw error;
}

async function refuseNewerSchema(db: Kysely<Schema>): Promise<void> {
  const tables = await db.introspection.getTables({ withInternalKyselyTables: true });
  if (!tables.some((table) => table.name === 'kysely_migration')) return;
  const { rows } = await sql<{ name: string }>`select name from kysely_migration`.execute(db);
  const unknown = rows.map((row) => row.name).filter((name) => !(name in MIGRATIONS));
  if (unknown.length === 0) return;
  throw new Problem(
    'unavailable',
    `This database was written by a newer Batchbell (it has ${unknown.sort().join(', ')}).`,
    'Start the newer version, or point DATABASE_URL or --db at another database.',
  );
}
