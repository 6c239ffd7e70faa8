import BetterSqlite from 'better-sqlite3';
import pg from 'pg';
import { Problem } from '../nutrition/problem.ts';

const UNWRITTEN = 'Nothing was written; what was there before is untouched.';

/** SQLite result codes by their first word: what is wrong with the file, and what to do. */
const SQLITE: readonly (readonly [prefix: string, message: string, hint: string])[] = [
  ['SQLITE_FULL', "The disk of the kitchen's memory is full.", 'Free some space, then send it again.'],
  [
    'SQLITE_READONLY',
    "The kitchen's memory is read-only.",
    'Let this user write the database file and its folder, or start with --db FILE.',
  ],
  ['SQLITE_BUSY', "The kitchen's memory is busy.", 'Another program is writing; send it again in a moment.'],
  ['SQLITE_IOERR', "The kitchen's memory cannot be read or written.", 'Check the disk, then send it again.'],
  ['SQLITE_CANTOPEN', "The kitchen's memory cannot be opened.", 'Check that its file and folder are there.'],
  ['SQLITE_CORRUPT', "The kitchen's memory is damaged.", 'Restore the last backup; see README.md.'],
  ['SQLITE_NOTADB', "The file of the kitchen's memory is no database.", 'Point --db at another file.'],
];

/** SQLSTATE classes and codes (PostgreSQL manual, appendix A). */
const POSTGRES: readonly (readonly [prefix: string, message: string, hint: string])[] = [
  ['53100', "The disk of the kitchen's memory is full.", 'Free some space, then send it again.'],
  ['25006', "The kitchen's memory is read-only.", 'Point DATABASE_URL at the primary server.'],
  ['42501', "The kitchen's memory is read-only.", 'Grant this user the right to write.'],
  ['53', "The kitchen's memory has no room for another connection.", 'Send it again in a moment.'],
  ['40', "The kitchen's memory is busy.", 'Send it again in a moment.'],
  ['55P03', "The kitchen's memory is busy.", 'Send it again in a moment.'],
];
const LOST = [
  "The connection to the kitchen's memory was lost.",
  'Send it again when the database server is back; recipes and macros go on working.',
] as const;

/**
 * What a person is told of a failure below: a `Problem` `unavailable` where the database is the cause, else the error
 * itself. Told apart by class and code.
 */
export function storeProblem(error: unknown): unknown {
  if (error instanceof BetterSqlite.SqliteError) return known(SQLITE, error.code) ?? error;
  if (error instanceof pg.DatabaseError) {
    const code = error.code ?? '';
    return /^(08|57P)/.test(code) ? unavailable(LOST) : (known(POSTGRES, code) ?? error);
  }
  return isConnectionLoss(error) ? unavailable(LOST) : error;
}

function known(rows: typeof SQLITE, code: string): Problem | undefined {
  const row = rows.find(([prefix]) => code.startsWith(prefix));
  return row && unavailable([row[1], row[2]]);
}

const unavailable = ([message, hint]: readonly [string, string]): Problem =>
  new Problem('unavailable', `${message} ${UNWRITTEN}`, hint);

/** The pg client reports a broken socket as a system error, or as a bare `Error` without a code. */
function isConnectionLoss(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  const { code } = error as NodeJS.ErrnoException;
  if (code !== undefined) return /^(ECONN|EPIPE|ETIMEDOUT|ENOTFOUND|EAI_AGAIN|EHOST|ENETUN)/.test(code);
  return Object.getPrototypeOf(error) === Error.prototype;
}

type Methods = { readonly [name: string]: (...given: never[]) => Promise<unknown> };

/** The same port, whose failures are told as `storeProblem` does. */
export function withStoreProblems<Port extends object>(port: Port): Port {
  const told = Object.entries(port as unknown as Methods).map(([name, method]) => [
    name,
    async (...given: never[]) => {
      try {
        return await method(...given);
      } catch (error) {
        throw storeProblem(error);
      }
    },
  ]);
  return Object.fromEntries(told) as Port;
}
