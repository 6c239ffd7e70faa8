import { setTimeout } from 'node:timers/promises';
import Database from 'better-sqlite3';
import {
  CompiledQuery,
  type DatabaseConnection,
  type Dialect,
  SqliteAdapter,
  SqliteDialect,
  type SqliteDialectConfig,
  SqliteDriver,
} from 'kysely';

const BUSY_TIMEOUT_MS = 5_000;
const BUSY_PAUSE_MS = 10;

/**
 * Takes the write lock at `begin`: a read that later writes would otherwise fail at once against another process.
 * Waiting for the lock is done here, in turns, because SQLite's own wait would stop the whole process.
 */
class ImmediateSqliteDriver extends SqliteDriver {
  readonly #handle: Database.Database;
  constructor(config: SqliteDialectConfig, handle: Database.Database) {
    super(config);
    this.#handle = handle;
  }

  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    const giveUpAt = performance.now() + BUSY_TIMEOUT_MS;
    for (;;) {
      try {
        await connection.executeQuery(CompiledQuery.raw('pragma busy_timeout = 0'));
        await connection.executeQuery(CompiledQuery.raw('begin immediate'));
        return;
      } catch (error) {
        if (!isBusy(error) || performance.now() > giveUpAt) throw error;
      } finally {
        await connection.executeQuery(CompiledQuery.raw(`pragma busy_timeout = ${BUSY_TIMEOUT_MS}`));
      }
      await setTimeout(BUSY_PAUSE_MS);
    }
  }

  /** A full disk makes SQLite roll back by itself; a second rollback would hide why. */
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#handle.inTransaction) await super.rollbackTransaction(connection);
  }
}

function isBusy(error: unknown): boolean {
  return error instanceof Database.SqliteError && error.code.startsWith('SQLITE_BUSY');
}

/** SQLite does roll back DDL, so migrations run in one transaction and two starting processes queue up. */
class TransactionalSqliteAdapter extends SqliteAdapter {
  override get supportsTransactionalDdl(): boolean {
    return true;
  }
}

class ImmediateSqliteDialect extends SqliteDialect {
  readonly #handle: Database.Database;
  constructor(handle: Database.Database) {
    super({ database: handle });
    this.#handle = handle;
  }
  override createDriver(): ImmediateSqliteDriver {
    return new ImmediateSqliteDriver({ database: this.#handle }, this.#handle);
  }
  override createAdapter(): TransactionalSqliteAdapter {
    return new TransactionalSqliteAdapter();
  }
}

/**
 * A SQLite file that several processes may share: write-ahead log, and `synchronous = full` so that what was
 * acknowledged survives a power cut. better-sqlite3 blocks the process while it waits for a lock.
 */
export function sqliteDialect(file: string): { dialect: Dialect; handle: Database.Database } {
  const handle = new Database(file, { timeout: BUSY_TIMEOUT_MS });
  try {
    handle.pragma('journal_mode = wal');
    handle.pragma('synchronous = full');
    handle.pragma('foreign_keys = on');
  } catch (error) {
    // Tried again at every request: each try must let go of the file.
    handle.close();
    throw error;
  }
  return { dialect: new ImmediateSqliteDialect(handle), handle };
}
