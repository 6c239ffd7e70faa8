import { sql, type Transaction } from 'kysely';
import type { Engine } from '../database.ts';
import type { Schema } from '../schema.ts';

/**
 * Makes this transaction the only writer of its workspace. SQLite has one writer anyway (`begin immediate`);
 * PostgreSQL takes an advisory lock that ends with the transaction.
 */
export async function lockWorkspace(
  trx: Transaction<Schema>,
  engine: Engine,
  workspace: string,
): Promise<void> {
  if (engine === 'postgres') {
    await sql`select pg_advisory_xact_lock(hashtextextended(${workspace}, 0))`.execute(trx);
  }
}
