import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Insertable } from 'kysely';
import { createChat } from '../../src/chat/chat.ts';
import type { Kitchen } from '../../src/kitchen/kitchen.ts';
import { recordMade } from '../../src/kitchen/stock/record-made.ts';
import { type Database, openDatabase } from '../../src/store/database.ts';
import { newId } from '../../src/store/ids.ts';
import { ledgersIn } from '../../src/store/ledger.ts';
import type { Schema } from '../../src/store/schema.ts';
import { median, type Row, timings } from './row.ts';

const ENTRIES = 200_000;
const MOST_MS = 50;
const BATCHES = 400;
/** Servings of one piece from each batch. */
const EACH = ENTRIES / BATCHES - 1;
/** Nine in ten batches are used up by them, as in a kitchen's real past. */
const piecesOf = (i: number): number => (i % 10 === 0 ? 1_000 : EACH);
const ROWS_AT_ONCE = 2_000;

/** "stock" through the chat over a ledger of 200,000 entries, on SQLite, and on PostgreSQL when DATABASE_URL is set. */
export async function benchStock(kitchen: Kitchen): Promise<Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'batchbell-bench-'));
  const rows = [await measured(kitchen, 'SQLite', join(folder, 'kitchen.db'))];
  rmSync(folder, { recursive: true });
  const url = process.env.DATABASE_URL;
  return url ? [...rows, await measured(kitchen, 'PostgreSQL', url)] : rows;
}

async function measured(kitchen: Kitchen, name: string, url: string): Promise<Row> {
  const database = await openDatabase(url);
  const workspace = `bench-${newId(Date.now())}`;
  try {
    const entries = await fill(kitchen, database, workspace);
    const nowMs = kitchen.clock.nowMs();
    const chat = createChat({ ...kitchen, ledgers: ledgersIn(database, () => nowMs) }, (error) => {
      throw error;
    });
    const asker = { role: 'staff', who: 'staff', workspace } as const;
    const ask = async (): Promise<void> => {
      const { answer } = await chat.ask({ text: 'stock', asker, conversation: 'b', isPrivate: true, nowMs });
      if (!answer || !(Number(answer.data.usable) > 0)) throw new Error('"stock" found nothing to measure.');
    };
    await timings(ask, 500, 20);
    const each = median(await timings(ask, 3_000, 200));
    return {
      what: `stock over ${entries} entries, ${name}`,
      measured: `${each.toFixed(1)} ms median`,
      beside: '',
      target: `at most ${MOST_MS} ms`,
      met: each <= MOST_MS,
    };
  } finally {
    await forget(database, workspace);
    await database.close();
  }
}

/** Some weeks of batches by the real service, then servings by the table: 200,000 through the service take minutes. */
async function fill(kitchen: Kitchen, database: Database, workspace: string): Promise<number> {
  const nowMs = kitchen.clock.nowMs();
  const ledger = ledgersIn(database, () => nowMs)(workspace);
  const recipes = [...kitchen.book.recipes.values()];
  for (let i = 0; i < BATCHES; i++) {
    const recipe = recipes[i % recipes.length];
    if (!recipe) throw new Error('the kitchen has no recipes');
    const atMs = nowMs - ((i % 6) * 24 + 3) * 3_600_000;
    await recordMade(
      { ledger, book: kitchen.book, nowMs },
      { who: 'staff', atMs, batches: [{ recipe, pieces: piecesOf(i), lots: [] }] },
    );
  }
  const holdings = await ledger.holdings();
  const servings = BATCHES * EACH;
  for (let start = 0; start < servings; start += ROWS_AT_ONCE) {
    const events: Insertable<Schema['events']>[] = [];
    const movements: Insertable<Schema['movements']>[] = [];
    for (let i = start; i < Math.min(servings, start + ROWS_AT_ONCE); i++) {
      const id = newId(nowMs + 1 + i);
      const holding = holdings[i % holdings.length];
      if (!holding) throw new Error('nothing was made');
      events.push({
        workspace,
        id,
        kind: 'served',
        who: 'staff',
        at_ms: nowMs,
        recorded_ms: nowMs,
        request_key: null,
        reverses: null,
        note: null,
      });
      movements.push({ workspace, event_id: id, holding_id: holding.id, pieces: -1 });
    }
    await database.db.transaction().execute(async (trx) => {
      await trx.insertInto('events').values(events).execute();
      await trx.insertInto('movements').values(movements).execute();
    });
  }
  await database.db
    .updateTable('balances')
    .set((eb) => ({ pieces: eb('pieces', '-', EACH) }))
    .where('workspace', '=', workspace)
    .execute();
  return BATCHES + servings;
}

async function forget(database: Database, workspace: string): Promise<void> {
  for (const table of ['movements', 'balances', 'holdings', 'batches', 'events'] as const)
    await database.db.deleteFrom(table).where('workspace', '=', workspace).execute();
}
