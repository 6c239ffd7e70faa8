import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { type Database, openDatabase } from '../../src/store/database.ts';

/** A fresh place for one test file: a PostgreSQL schema when DATABASE_URL says so, else a SQLite file. */
export interface Place {
  readonly url: string;
  remove(): Promise<void>;
}

export async function freshPlace(): Promise<Place> {
  const base = process.env.DATABASE_URL ?? '';
  if (!base.startsWith('postgres')) {
    const folder = mkdtempSync(join(tmpdir(), 'batchbell-'));
    return {
      url: join(folder, 'kitchen.db'),
      remove: async () => rmSync(folder, { recursive: true, force: true }),
    };
  }
  const schema = `t_${randomBytes(6).toString('hex')}`;
  const run = async (statement: string): Promise<void> => {
    const client = new pg.Client({ connectionString: base });
    await client.connect();
    await client.query(statement);
    await client.end();
  };
  await run(`create schema ${schema}`);
  const url = new URL(base);
  url.searchParams.set('options', `-c search_path=${schema}`);
  return { url: url.href, remove: () => run(`drop schema ${schema} cascade`) };
}

/** Opens a migrated database in a fresh place; `close` also removes it. */
export async function freshDatabase(): Promise<Database> {
  const place = await freshPlace();
  const database = await openDatabase(place.url);
  return {
    ...database,
    async close() {
      await database.close();
      await place.remove();
    },
  };
}
