import { join } from 'node:path';
import type { Ledger, Ledgers } from './kitchen/stock/ledger.ts';
import type { Database } from './store/database.ts';

/** The kitchen's memory: a database that is opened when something is first remembered or looked up. */
export interface Memory {
  readonly ledgers: Ledgers;
  /** Opens the database at the first call. A failure is not kept: the next call tries again. */
  database(): Promise<Database>;
  /** Closes what was opened; nothing when it never was. */
  close(): Promise<void>;
}

/** Where the memory is kept unless told otherwise, under the current folder. */
export const DEFAULT_FILE = join('data', 'kitchen.db');

const LEDGER_METHODS: { readonly [method in keyof Ledger]: true } = {
  write: true,
  holdings: true,
  batches: true,
  event: true,
  eventByRequest: true,
  lastEventBy: true,
  events: true,
  movementsOf: true,
  historyOf: true,
  readings: true,
  openings: true,
};

/**
 * The memory behind `url` (`postgres://…` or a SQLite file), not opened yet: most requests need no database, and one
 * that cannot be opened leaves the rest of the kitchen answering.
 */
export function lazyMemory(url: string, nowMs: () => number): Memory {
  let opening: Promise<Database> | undefined;
  const database = (): Promise<Database> => {
    opening ??= import('./store/database.ts')
      .then(({ openDatabase }) => openDatabase(url))
      .catch((error: unknown) => {
        opening = undefined;
        throw error;
      });
    return opening;
  };
  const ledgerOf = async (workspace: string): Promise<Ledger> => {
    const [{ ledgersIn }, opened] = await Promise.all([import('./store/ledger.ts'), database()]);
    return ledgersIn(opened, nowMs)(workspace);
  };
  return {
    ledgers: (workspace) => lazyLedger(() => ledgerOf(workspace)),
    database,
    async close() {
      const opened = await opening?.catch(() => undefined);
      opening = undefined;
      await opened?.close();
    },
  };
}

/** A ledger whose every method opens the real one first. */
function lazyLedger(open: () => Promise<Ledger>): Ledger {
  type Method = (...given: readonly unknown[]) => Promise<unknown>;
  const methods = Object.keys(LEDGER_METHODS).map((name): [string, Method] => [
    name,
    async (...given) => ((await open())[name as keyof Ledger] as Method)(...given),
  ]);
  return Object.fromEntries(methods) as unknown as Ledger;
}
