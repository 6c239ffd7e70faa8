import { existsSync, mkdirSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { Kysely, sql } from 'kysely';
import { Problem } from '../nutrition/problem.ts';
import { postgresDialect } from './dialect/postgres.ts';
import { sqliteDialect } from './dialect/sqlite.ts';
import { migrate } from './migrate.ts';
import type { Schema } from './schema.ts';
import { backUpSqlite } from './sqlite-backup.ts';

export type Engine = 'sqlite' | 'postgres';

export interface Database {
  readonly engine: Engine;
  readonly db: Kysely<Schema>;
  /** Copies a live SQLite database to a file, while it is being written. PostgreSQL has its own tools for that. */
  backup(file: string): Promise<void>;
  /** Whether it answers a query now. */
  answers(): Promise<boolean>;
  close(): Promise<void>;
}

/**
 * Opens and migrates the database behind `url`: `postgres://…`, or the path of a SQLite file (made if it is not there).
 * @throws Problem `unavailable` with what to do when it cannot be opened.
 */
export async function openDatabase(
  url: string,
  onLost: (error: Error) => void = () => {},
): Promise<Database> {
  const database = /^postgres(ql)?:\/\//.test(url) ? openPostgres(url, onLost) : openSqlite(url);
  try {
    await migrate(database.db, database.engine);
    return database;
  } catch (error) {
    await database.close();
    throw error instanceof Problem ? error : cannotOpen(error);
  }
}

function openPostgres(url: string, onLost: (error: Error) => void): Database {
  const { dialect } = postgresDialect(url, onLost);
  const db = new Kysely<Schema>({ dialect });
  return {
    engine: 'postgres',
    db,
    async backup() {
      throw new Problem('not_possible', 'This kitchen is on PostgreSQL.', 'Back it up with pg_dump.');
    },
    answers: () => answers(db),
    close: () => db.destroy(),
  };
}

function openSqlite(path: string): Database {
  try {
    makeFolderOf(path);
    const { dialect, handle } = sqliteDialect(path);
    const db = new Kysely<Schema>({ dialect });
    // What is written to a file that was taken away is gone with this process, although every query goes on working.
    const opened = fileId(path);
    return {
      engine: 'sqlite',
      db,
      backup: (file) => backUpSqlite(handle, file),
      answers: async () => fileId(path) === opened && answers(db),
      close: () => db.destroy(),
    };
  } catch (error) {
    throw cannotOpen(error);
  }
}

const answers = (db: Kysely<Schema>): Promise<boolean> =>
  sql`select 1`.execute(db).then(
    () => true,
    () => false,
  );

/** Which file a path names now; `undefined` when it names none. */
const fileId = (path: string): number | undefined => statSync(path, { throwIfNoEntry: false })?.ino;

/** One level only: a mistyped path is better refused than built. */
function makeFolderOf(path: string): void {
  const folder = dirname(resolve(path));
  if (path !== ':memory:' && !existsSync(folder)) mkdirSync(folder);
}

function cannotOpen(error: unknown): Problem {
  const reason = error instanceof Error ? error.message : String(error);
  if (/full|disk I\/O/i.test(reason)) {
    return new Problem(
      'unavailable',
      `The kitchen's database cannot be opened: ${reason}`,
      'Look whether the disk is full: free some space, then start again.',
    );
  }
  return new Problem(
    'unavailable',
    `The kitchen's database cannot be opened: ${reason}`,
    'Check DATABASE_URL or --db: a postgres:// address, or a file in a folder this user may write to.',
  );
}
