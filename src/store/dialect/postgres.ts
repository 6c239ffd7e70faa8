import { type Dialect, PostgresDialect } from 'kysely';
import pg from 'pg';

const INT8 = 20;

/** Epoch milliseconds fit a double; pg would hand them over as strings. */
const types: pg.CustomTypesConfig = {
  getTypeParser: ((oid: number, format?: 'text' | 'binary') =>
    oid === INT8
      ? Number
      : pg.types.getTypeParser(oid, format as 'text')) as pg.CustomTypesConfig['getTypeParser'],
};

/**
 * A PostgreSQL pool. `onLost` hears of connections that broke; the pool replaces them and the next query
 * works again once the server is back.
 */
export function postgresDialect(
  url: string,
  onLost: (error: Error) => void,
): { dialect: Dialect; pool: pg.Pool } {
  const pool = new pg.Pool({ connectionString: url, max: 10, types, connectionTimeoutMillis: 5_000 });
  pool.on('error', onLost);
  // A connection in use that breaks fails its query too; without a listener its event would end the process.
  pool.on('connect', (client) => void client.on('error', onLost));
  return { dialect: new PostgresDialect({ pool }), pool };
}
