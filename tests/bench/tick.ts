import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Kitchen } from '../../src/kitchen/kitchen.ts';
import type { Messenger } from '../../src/kitchen/reminders/messenger.ts';
import type { NewReminder } from '../../src/kitchen/reminders/reminder-book.ts';
import { createTick, type Tick } from '../../src/kitchen/reminders/tick.ts';
import { type Database, openDatabase } from '../../src/store/database.ts';
import { gameBooksIn } from '../../src/store/game-book.ts';
import { newId } from '../../src/store/ids.ts';
import { ledgersIn } from '../../src/store/ledger.ts';
import { reminderBooksIn } from '../../src/store/reminders/book.ts';
import { reminderQueuesIn } from '../../src/store/reminders/queue.ts';
import { reminderRow } from '../../src/store/reminders/rows.ts';
import { median, type Row } from './row.ts';

const MANY = 1_000_000;
const FEW = 1_000;
const DUE = 100;
const MOST_RATIO = 1.5;
const ROUNDS = 9;
const ROWS_AT_ONCE = 1_500;
const MINUTE_MS = 60_000;

/** A tick that sends 100 due reminders among 1,000,000 waiting ones beside one among 1,000. */
export async function benchTick(kitchen: Kitchen): Promise<Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'batchbell-bench-'));
  const rows = [await measured(kitchen, 'SQLite', join(folder, 'kitchen.db'))];
  rmSync(folder, { recursive: true });
  const url = process.env.DATABASE_URL;
  return url ? [...rows, await measured(kitchen, 'PostgreSQL', url)] : rows;
}

/** Taken in turn within one run, so that a busy machine slows both. */
async function measured(kitchen: Kitchen, name: string, url: string): Promise<Row> {
  const database = await openDatabase(url);
  const workspaces = { few: `few-${newId(Date.now())}`, many: `many-${newId(Date.now())}` };
  try {
    const few = await sideOf(kitchen, database, workspaces.few, FEW);
    const many = await sideOf(kitchen, database, workspaces.many, MANY);
    const times = { few: [] as number[], many: [] as number[] };
    for (let round = 0; round <= ROUNDS; round += 1) {
      const [a, b] = [await few(round), await many(round)];
      // The first round warms up.
      if (round > 0) {
        times.few.push(a);
        times.many.push(b);
      }
    }
    const [beside, each] = [median(times.few), median(times.many)];
    return {
      what: `tick, ${DUE} due of ${MANY.toLocaleString('en-US')} waiting, ${name}`,
      measured: `${each.toFixed(0)} ms median`,
      beside: `${beside.toFixed(0)} ms of ${FEW.toLocaleString('en-US')} waiting: ${(each / beside).toFixed(2)} times`,
      target: `at most ${MOST_RATIO} times`,
      met: each <= MOST_RATIO * beside,
    };
  } finally {
    for (const workspace of Object.values(workspaces)) await forget(database, workspace);
    await database.close();
  }
}

/** Fills one workspace; each call makes 100 due and times the tick that sends them. */
async function sideOf(
  kitchen: Kitchen,
  database: Database,
  workspace: string,
  waiting: number,
): Promise<(round: number) => Promise<number>> {
  const startMs = kitchen.clock.nowMs();
  await fill(database, workspace, waiting, startMs);
  const reminders = reminderBooksIn(database)(workspace);
  let sent = 0;
  const messenger: Messenger = {
    send: async ({ reminder }) => {
      if (reminder?.key.startsWith('due:')) sent += 1;
      return 'bench';
    },
    find: async () => undefined,
  };
  const tick: Tick = createTick({
    book: kitchen.book,
    books: {
      ledger: ledgersIn(database, () => startMs)(workspace),
      games: gameBooksIn(database)(workspace),
      reminders,
    },
    queue: reminderQueuesIn(database)(workspace),
    composer: { compose: async ({ key }) => key, composeMissed: () => '' },
    messenger,
    report: (error) => {
      throw error;
    },
  });
  return async (round) => {
    const nowMs = startMs + round * MINUTE_MS;
    for (let n = 0; n < DUE; n += 1) await reminders.add(ownAt(`due:${round}:${n}`, nowMs), nowMs);
    sent = 0;
    const began = performance.now();
    await tick(nowMs);
    const took = performance.now() - began;
    if (sent !== DUE) throw new Error(`the tick sent ${sent} of ${DUE} due reminders.`);
    return took;
  };
}

const ownAt = (key: string, dueMs: number): NewReminder => ({
  key,
  kind: 'own',
  audience: 'kitchen',
  dueMs,
  helpsUntilMs: dueMs + 12 * 60 * MINUTE_MS,
  about: { task: 'order milk' },
  planned: false,
});

/** Rows put in as they are: a million one by one would take the day. Due from an hour ahead on, over a year. */
function fill({ db }: Database, workspace: string, waiting: number, startMs: number): Promise<void> {
  const stepMs = (365 * 24 * 60 * MINUTE_MS) / waiting;
  return db.transaction().execute(async (trx) => {
    for (let first = 0; first < waiting; first += ROWS_AT_ONCE) {
      const rows = Array.from({ length: Math.min(ROWS_AT_ONCE, waiting - first) }, (_, n) => {
        const dueMs = Math.round(startMs + 60 * MINUTE_MS + (first + n) * stepMs);
        return reminderRow(workspace, ownAt(`waiting:${first + n}`, dueMs), first + n + 1, startMs);
      });
      await trx.insertInto('reminders').values(rows).execute();
    }
  });
}

async function forget({ db }: Database, workspace: string): Promise<void> {
  await db.deleteFrom('outbox').where('workspace', '=', workspace).execute();
  await db.deleteFrom('reminders').where('workspace', '=', workspace).execute();
}
