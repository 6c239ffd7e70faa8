import { type Kysely, sql, type Transaction } from 'kysely';
import type { Entry, Ledger, Ledgers, LedgerWriter } from '../kitchen/stock/ledger.ts';
import type { Database } from './database.ts';
import { lockWorkspace } from './dialect/lock-workspace.ts';
import { newId } from './ids.ts';
import { ledgerView } from './ledger-reads.ts';
import { batchRow, eventRow, holdingRow } from './ledger-rows.ts';
import type { Schema } from './schema.ts';

/** The ledgers kept in this database, one a workspace. */
export function ledgersIn(database: Database, nowMs: () => number): Ledgers {
  return (workspace): Ledger => ({
    ...ledgerView(database.db, workspace),
    write: (work) =>
      database.db.transaction().execute(async (trx) => {
        await lockWorkspace(trx, database.engine, workspace);
        return work(writer(trx, workspace, nowMs));
      }),
  });
}

function writer(trx: Transaction<Schema>, workspace: string, nowMs: () => number): LedgerWriter {
  return {
    ...ledgerView(trx, workspace),
    newId: () => newId(nowMs()),
    append: (entry) => append(trx, workspace, entry),
    nextBatchCode: () => nextBatchCode(trx, workspace),
  };
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
  const { event, batch } = entry;
  await db.insertInto('events').values(eventRow(workspace, event)).execute();
  if (batch) {
    await db.insertInto('batches').values(batchRow(workspace, batch)).execute();
    const lots = batch.lots.map((lot) => ({
      workspace,
      batch_id: batch.id,
      food_id: lot.foodId,
      lot: lot.lot,
    }));
    if (lots.length > 0) await db.insertInto('batch_lots').values(lots).execute();
  }
  const holdings = (entry.holdings ?? []).map((holding) => holdingRow(workspace, holding));
  if (holdings.length > 0) await db.insertInto('holdings').values(holdings).execute();
  const movements = (entry.movements ?? []).map((movement) => ({
    workspace,
    event_id: event.id,
    holding_id: movement.holdingId,
    pieces: movement.pieces,
  }));
  if (movements.length > 0) await db.insertInto('movements').values(movements).execute();
  const readings = (entry.readings ?? []).map((reading) => ({
    workspace,
    event_id: event.id,
    location: reading.location,
    at_ms: reading.atMs,
    temp_f: reading.tempF,
    action: reading.action ?? null,
  }));
  if (readings.length > 0) await db.insertInto('readings').values(readings).execute();
  const openings = (entry.openings ?? []).map((opening) => ({
    workspace,
    event_id: event.id,
    food_id: opening.foodId,
    lot: opening.lot ?? null,
    opened_date: opening.openedDate,
    use_by: opening.useBy ?? null,
  }));
  if (openings.length > 0) await db.insertInto('openings').values(openings).execute();
}
