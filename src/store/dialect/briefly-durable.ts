import { type Kysely, sql } from 'kysely';
import type { Engine } from '../database.ts';
import type { Schema } from '../schema.ts';

/**
 * Writes something that is worthless after a while without waiting for the disk. SQLite would sync at the commit and stop
 * the process meanwhile; all processes see the write at once either way, only a power cut may lose it.
 */
export async function brieflyDurable<Result>(
  db: Kysely<Schema>,
  engine: Engine,
  write: (db: Kysely<Schema>) => Promise<Result>,
): Promise<Result> {
  if (engine === 'postgres') return write(db);
  return db.connection().execute(async (connection) => {
    await sql`pragma synchronous = normal`.execute(connection);
    try {
      return await connection.transaction().execute(write);
    } finally {
      await sql`pragma synchronous = full`.execute(connection);
    }
  });
}
