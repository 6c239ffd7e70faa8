import { type Kysely, type Selectable, sql } from 'kysely';
import type { Batch, BatchFilter, Holding, LedgerView } from '../kitchen/stock/ledger.ts';
import { withHolds } from './holds-reads.ts';
import { inParts } from './in-parts.ts';
import { batchOf, eventOf, holdingOf, openingOf, readingOf } from './ledger-rows.ts';
import { notReversed } from './not-reversed.ts';
import { pantryView } from './pantry-reads.ts';
import { scheduleView } from './schedule-changes.ts';
import type { BatchesTable, EventsTable, Schema } from './schema.ts';

/** Reads one workspace's ledger through `db`, which may be a transaction. */
export function ledgerView(db: Kysely<Schema>, workspace: string): LedgerView {
  const standing = () =>
    db
      .selectFrom('events as e')
      .where('e.workspace', '=', workspace)
      .where('e.kind', '!=', 'undone')
      .where(notReversed(workspace, 'e.id'));

  return {
    ...pantryView(db, workspace),
    ...scheduleView(db, workspace),

    holdings: () => holdings(db, workspace),

    async batches({ eventIds, ...filter }) {
      const rows =
        eventIds === undefined
          ? await batchRows(db, workspace, filter)
          : await inParts(eventIds, (part) => batchRows(db, workspace, { ...filter, eventIds: part }));
      return withLots(db, workspace, rows);
    },

    batchesById: async (ids) => [...(await batchesById(db, workspace, [...new Set(ids)])).values()],

    async event(id) {
      const row = await one(
        db.selectFrom('events').selectAll().where('workspace', '=', workspace).where('id', '=', id),
      );
      return row && eventOf(row);
    },

    async eventByRequest(requestKey) {
      const row = await one(
        db
          .selectFrom('events')
          .selectAll()
          .where('workspace', '=', workspace)
          .where('request_key', '=', requestKey),
      );
      return row && eventOf(row);
    },

    async lastEventBy(who) {
      const row = await one(
        standing().selectAll('e').where('e.who', '=', who).orderBy('e.id', 'desc').limit(1),
      );
      return row && eventOf(row);
    },

    async events(fromMs, toMs) {
      const rows = await standing()
        .selectAll('e')
        .where('e.at_ms', '>=', fromMs)
        .where('e.at_ms', '<', toMs)
        .orderBy('e.at_ms')
        .orderBy('e.id')
        .execute();
      return rows.map(eventOf);
    },

    async movementsOf(eventIds) {
      return inParts(eventIds, (part) =>
        db
          .selectFrom('movements as m')
          .innerJoin('holdings as h', (join) =>
            join.onRef('h.workspace', '=', 'm.workspace').onRef('h.id', '=', 'm.holding_id'),
          )
          .select(['m.event_id as eventId', 'm.holding_id as holdingId', 'm.pieces', 'h.batch_id as batchId'])
          .where('m.workspace', '=', workspace)
          .where('m.event_id', 'in', part)
          .execute(),
      );
    },

    async historyOf(batchId) {
      const rows = await db
        .selectFrom('movements as m')
        .innerJoin('holdings as h', (join) =>
          join.onRef('h.workspace', '=', 'm.workspace').onRef('h.id', '=', 'm.holding_id'),
        )
        .innerJoin('events as e', (join) =>
          join.onRef('e.workspace', '=', 'm.workspace').onRef('e.id', '=', 'm.event_id'),
        )
        .selectAll('e')
        .select('m.pieces as pieces')
        .where('m.workspace', '=', workspace)
        .where('h.batch_id', '=', batchId)
        .orderBy('e.id')
        .execute();
      return rows.map((row) => ({ event: eventOf(row as Selectable<EventsTable>), pieces: row.pieces }));
    },

    async readings({ location, fromMs, toMs }) {
      let query = db
        .selectFrom('readings as r')
        .innerJoin('events as e', (join) =>
          join.onRef('e.workspace', '=', 'r.workspace').onRef('e.id', '=', 'r.event_id'),
        )
        .selectAll('r')
        .select('e.who')
        .where('r.workspace', '=', workspace)
        .where('r.at_ms', '>=', fromMs)
        .where('r.at_ms', '<', toMs)
        .where(notReversed(workspace, 'r.event_id'))
        .orderBy('r.at_ms');
      if (location !== undefined) query = query.where('r.location', '=', location);
      return (await query.execute()).map(readingOf);
    },

    async firstReadings() {
      const rows = await db
        .selectFrom('readings as r')
        .select((eb) => ['r.location', eb.fn.min('r.at_ms').as('first_ms')])
        .where('r.workspace', '=', workspace)
        .where(notReversed(workspace, 'r.event_id'))
        .groupBy('r.location')
        .execute();
      return new Map(rows.map((row) => [row.location, Number(row.first_ms)]));
    },

    async openings(foodIds) {
      if (foodIds.length === 0) return [];
      const rows = await db
        .selectFrom('openings as o')
        .innerJoin('events as e', (join) =>
          join.onRef('e.workspace', '=', 'o.workspace').onRef('e.id', '=', 'o.event_id'),
        )
        .selectAll('o')
        .select('e.at_ms')
        .where('o.workspace', '=', workspace)
        .where('o.food_id', 'in', foodIds)
        .where(notReversed(workspace, 'o.event_id'))
        .orderBy('e.at_ms', 'desc')
        .orderBy('e.id', 'desc')
        .execute();
      const latest = new Map(rows.reverse().map((row) => [`${row.food_id} ${row.lot ?? ''}`, row]));
      return [...latest.values()].map((row) => ({ ...openingOf(row), atMs: row.at_ms }));
    },
  };
}

async function one<T>(query: { execute(): Promise<T[]> }): Promise<T | undefined> {
  const [row] = await query.execute();
  return row;
}

/** What is held now: the few balances above zero, with what they are of. */
async function holdings(db: Kysely<Schema>, workspace: string): Promise<readonly Holding[]> {
  const rows = await db
    .selectFrom('balances as b')
    .innerJoin('holdings as h', (join) =>
      join.onRef('h.workspace', '=', 'b.workspace').onRef('h.id', '=', 'b.holding_id'),
    )
    .selectAll('h')
    .select('b.pieces')
    .where('b.workspace', '=', workspace)
    .where(sql<boolean>`b.pieces > 0`)
    .execute();
  const batches = await batchesById(db, workspace, [...new Set(rows.map((row) => row.batch_id))]);
  const found = rows.flatMap((row) => {
    const batch = batches.get(row.batch_id);
    return batch ? [holdingOf(row, batch, row.pieces)] : [];
  });
  found.sort(
    (a, b) =>
      (a.useBy ?? '9999').localeCompare(b.useBy ?? '9999') ||
      a.batch.madeMs - b.batch.madeMs ||
      (a.id < b.id ? -1 : 1),
  );
  return withHolds(db, workspace, found);
}

async function batchesById(
  db: Kysely<Schema>,
  workspace: string,
  ids: readonly string[],
): Promise<ReadonlyMap<string, Batch>> {
  const rows = await inParts(ids, (part) =>
    db.selectFrom('batches').selectAll().where('workspace', '=', workspace).where('id', 'in', part).execute(),
  );
  return new Map((await withLots(db, workspace, rows)).map((batch) => [batch.id, batch]));
}

async function batchRows(
  db: Kysely<Schema>,
  workspace: string,
  filter: BatchFilter,
): Promise<readonly Selectable<BatchesTable>[]> {
  let query = db
    .selectFrom('batches as b')
    .selectAll('b')
    .where('b.workspace', '=', workspace)
    .where(notReversed(workspace, 'b.event_id'))
    .orderBy('b.made_ms');
  if (filter.codes) query = query.where('b.code', 'in', filter.codes.length > 0 ? filter.codes : ['']);
  if (filter.eventIds) query = query.where('b.event_id', 'in', filter.eventIds);
  if (filter.recipeId !== undefined) query = query.where('b.recipe_id', '=', filter.recipeId);
  if (filter.madeDate !== undefined) query = query.where('b.made_date', '=', filter.madeDate);
  if (filter.madeFrom !== undefined) query = query.where('b.made_date', '>=', filter.madeFrom);
  const { lot } = filter;
  if (lot !== undefined) {
    query = query.where(({ exists, selectFrom }) =>
      exists(
        selectFrom('batch_lots as l')
          .select('l.lot')
          .where('l.workspace', '=', workspace)
          .whereRef('l.batch_id', '=', 'b.id')
          .where(sql`lower(l.lot)`, '=', lot.toLowerCase()),
      ),
    );
  }
  return query.execute();
}

async function withLots(
  db: Kysely<Schema>,
  workspace: string,
  rows: readonly Selectable<BatchesTable>[],
): Promise<readonly Batch[]> {
  const lots = await inParts(
    rows.map((row) => row.id),
    (part) =>
      db
        .selectFrom('batch_lots')
        .select(['batch_id', 'food_id', 'lot'])
        .where('workspace', '=', workspace)
        .where('batch_id', 'in', part)
        .orderBy('food_id')
        .execute(),
  );
  const byBatch = new Map<string, { food_id: string; lot: string }[]>();
  for (const lot of lots) byBatch.set(lot.batch_id, [...(byBatch.get(lot.batch_id) ?? []), lot]);
  return rows.map((row) => batchOf(row, byBatch.get(row.id) ?? []));
}
