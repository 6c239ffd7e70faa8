import { type Kysely, sql, type Transaction } from 'kysely';
import type { Entry, Ledger, Ledgers, LedgerWriter } from '../kitchen/stock/ledger.ts';
import type { Database } from './database.ts';
import { lockWorkspace } from './dialect/lock-workspace.ts';
import { idsAfter } from './ids.ts';
import { ledgerView } from './ledger-reads.ts';
import { batchRow, eventRow, holdingRow, openingRow, readingRow } from './ledger-rows.ts';
import { appendPantry } from './pantry-writes.ts';
import { appendSchedule } from './schedule-changes.ts';
import type { Schema } from './schema.ts';
import { withStoreProblems } from './store-problem.ts';

/** The ledgers kept in this database, one a workspace. What the database refuses comes out as a `Problem`. */
export function ledgersIn(database: Database, nowMs: () => number): Ledgers {
  return (workspace): Ledger =>
    withStoreProblems({
      ...ledgerView(database.db, workspace),
      write: (work) =>
        database.db.transaction().execute(async (trx) => {
          await lockWorkspace(trx, database.engine, workspace);
          return work(await writer(trx, workspace, nowMs));
        }),
    });
}

async function writer(
  trx: Transaction<Schema>,
  workspace: string,
  nowMs: () => number,
): Promise<LedgerWriter> {
  return {
    ...ledgerView(trx, workspace),
    newId: idsAfter(await lastId(trx, workspace), nowMs),
    append: (entry) => append(trx, workspace, entry),
    nextBatchCode: () => nextBatchCode(trx, workspace),
  };
}

/** The greatest id in use: events are written last of all that one entry names, except what it brings. */
async function lastId(db: Kysely<Schema>, workspace: string): Promise<string | undefined> {
  const greatest = (table: 'events' | 'holdings' | 'batches') =>
    db
      .selectFrom(table)
      .select('id')
      .where('workspace', '=', workspace)
      .orderBy('id', 'desc')
      .limit(1)
      .executeTakeFirst();
  const found = [await greatest('events'), await greatest('holdings'), await greatest('batches')];
  return found
    .flatMap((row) => row?.id ?? [])
    .sort()
    .at(-1);
}

/** B1, B2, …: counted over all batches ever, so a code never comes back for other food. */
async function nextBatchCode(db: Kysely<Schema>, workspace: string): Promise<string> {
  const row = await db
    .selectFrom('batches')
    .select(sql<number>`cast(count(*) as integer)`.as('made'))
    .where('workspace', '=', workspace)
    .executeTakeFirstOrThrow();
  return `B${row.made + 1}`;
}

async function append(db: Kysely<Schema>, workspace: string, entry: Entry): Promise<void> {
  const { event } = entry;
  await db.insertInto('events').values(eventRow(workspace, event)).execute();
  for (const batch of entry.batches ?? []) {
    await db.insertInto('batches').values(batchRow(workspace, batch)).execute();
    const lots = batch.lots.map((lot) => ({
      workspace,
      batch_id: batch.id,
      food_id: lot.foodId,
      lot: lot.lot,
    }));
    if (lots.length > 0) await db.insertInto('batch_lots').values(lots).execute();
  }
  for (const holding of entry.holdings ?? []) {
    await db.insertInto('holdings').values(holdingRow(workspace, holding)).execute();
    await db.insertInto('balances').values({ workspace, holding_id: holding.id, pieces: 0 }).execute();
  }
  for (const { holdingId, pieces } of entry.movements ?? []) {
    await db
      .insertInto('movements')
      .values({ workspace, event_id: event.id, holding_id: holdingId, pieces })
      .execute();
    await db
      .updateTable('balances')
      .set((eb) => ({ pieces: eb('pieces', '+', pieces) }))
      .where('workspace', '=', workspace)
      .where('holding_id', '=', holdingId)
      .execute();
  }
  const readings = (entry.readings ?? []).map((reading) => readingRow(workspace, event.id, reading));
  if (readings.length > 0) await db.insertInto('readings').values(readings).execute();
  const openings = (entry.openings ?? []).map((opening) => openingRow(workspace, event.id, opening));
  if (openings.length > 0) await db.insertInto('openings').values(openings).execute();
  await appendPantry(db, workspace, event.id, entry);
  if (entry.schedule) await appendSchedule(db, workspace, event.id, entry.schedule);
}
