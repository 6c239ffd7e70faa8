import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { GameBooks } from './kitchen/games/game.ts';
import { lazyPort } from './kitchen/lazy-port.ts';
import type { ReminderBooks } from './kitchen/reminders/reminder-book.ts';
import type { ReminderQueues } from './kitchen/reminders/reminder-queue.ts';
import type { Rosters } from './kitchen/roster/roster.ts';
import type { ChoiceBooks } from './kitchen/settings/choices.ts';
import type { Ledgers } from './kitchen/stock/ledger.ts';
import type { WorkspaceMemory } from './kitchen/workspaces/workspaces.ts';
import type { Database } from './store/database.ts';

/** The kitchen's memory: a database that is opened when something is first remembered or looked up. */
export interface Memory {
  readonly ledgers: Ledgers;
  readonly games: GameBooks;
  readonly reminders: ReminderBooks;
  readonly rosters: Rosters;
  readonly choices: ChoiceBooks;
  /** For the scheduler alone. */
  readonly queues: ReminderQueues;
  /** For a surface that serves several workspaces. `tokenKeys`, 32 bytes each, encrypt what installations hold. */
  workspaces(tokenKeys: readonly Buffer[]): WorkspaceMemory;
  /** Whether the database answers; it is opened if it was not. */
  answers(): Promise<boolean>;
  /** Whether a database is open or there to be opened; opens none. */
  remembers(): boolean;
  /** Opens the database at the first call. A failure is not kept: the next call tries again. */
  database(): Promise<Database>;
  /** Closes what was opened; nothing when it never was. */
  close(): Promise<void>;
}

/** Where the memory is kept unless told otherwise, under the current folder. */
export const DEFAULT_FILE = join('data', 'kitchen.db');

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
  return {
    remembers: () => opening !== undefined || url.startsWith('postgres') || existsSync(url),
    ledgers: (workspace) =>
      lazyPort(async () => {
        const { ledgersIn } = await import('./store/ledger.ts');
        return ledgersIn(await database(), nowMs)(workspace);
      }),
    games: (workspace) =>
      lazyPort(async () => {
        const { gameBooksIn } = await import('./store/game-book.ts');
        return gameBooksIn(await database())(workspace);
      }),
    reminders: (workspace) =>
      lazyPort(async () => {
        const { reminderBooksIn } = await import('./store/reminders/book.ts');
        return reminderBooksIn(await database())(workspace);
      }),
    rosters: (workspace) =>
      lazyPort(async () => {
        const { rostersIn } = await import('./store/roster.ts');
        return rostersIn(await database())(workspace);
      }),
    choices: (workspace) =>
      lazyPort(async () => {
        const { choiceBooksIn } = await import('./store/choices.ts');
        return choiceBooksIn(await database())(workspace);
      }),
    queues: (workspace) =>
      lazyPort(async () => {
        const { reminderQueuesIn } = await import('./store/reminders/queue.ts');
        return reminderQueuesIn(await database())(workspace);
      }),
    workspaces: (tokenKeys) => ({
      installations: lazyPort(async () => {
        const [{ installationsIn }, { keyRing }] = await Promise.all([
          import('./store/workspaces/installations.ts'),
          import('./store/workspaces/key-ring.ts'),
        ]);
        return installationsIn(await database(), keyRing(tokenKeys));
      }),
      claims: lazyPort(async () => {
        const { claimsIn } = await import('./store/workspaces/claims.ts');
        return claimsIn(await database());
      }),
      begun: lazyPort(async () => {
        const { installsBegunIn } = await import('./store/workspaces/installs-begun.ts');
        return installsBegunIn(await database());
      }),
    }),
    async answers() {
      try {
        return await (await database()).answers();
      } catch {
        return false;
      }
    },
    database,
    async close() {
      const opened = await opening?.catch(() => undefined);
      opening = undefined;
      await opened?.close();
    },
  };
}
