import type { SelectQueryBuilder } from 'kysely';
import type { Engine } from '../database.ts';

/**
 * Locks the rows picked and passes over rows another instance holds. SQLite needs neither: it has one writer, and the
 * statement around this one is a write.
 */
export function skipLocked<DB, TB extends keyof DB, O>(
  query: SelectQueryBuilder<DB, TB, O>,
  engine: Engine,
): SelectQueryBuilder<DB, TB, O> {
  return engine === 'postgres' ? query.forUpdate().skipLocked() : query;
}
