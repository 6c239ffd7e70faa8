import type { Insertable, Selectable } from 'kysely';
import type {
  Batch,
  BatchFacts,
  EventKind,
  Holding,
  HoldingState,
  LedgerEvent,
  LoggedReading,
  NewHolding,
  Opening,
  Reading,
} from '../kitchen/stock/ledger.ts';
import type { CalendarDate } from '../kitchen/time/zone.ts';
import { present } from './present.ts';
import type {
  BatchesTable,
  BatchLotsTable,
  EventsTable,
  HoldingsTable,
  OpeningsTable,
  ReadingsTable,
} from './schema.ts';

export function eventOf(row: Selectable<EventsTable>): LedgerEvent {
  return {
    id: row.id,
    kind: row.kind as EventKind,
    who: row.who,
    atMs: row.at_ms,
    recordedMs: row.recorded_ms,
    ...present('requestKey', row.request_key),
    ...present('reverses', row.reverses),
    ...present('note', row.note),
  };
}

export function eventRow(workspace: string, event: LedgerEvent): Insertable<EventsTable> {
  return {
    workspace,
    id: event.id,
    kind: event.kind,
    who: event.who,
    at_ms: event.atMs,
    recorded_ms: event.recordedMs,
    request_key: event.requestKey ?? null,
    reverses: event.reverses ?? null,
    note: event.note ?? null,
  };
}

export function batchOf(
  row: Selectable<BatchesTable>,
  lots: readonly Pick<BatchLotsTable, 'food_id' | 'lot'>[],
): Batch {
  return {
    id: row.id,
    code: row.code,
    eventId: row.event_id,
    recipeId: row.recipe_id,
    recipeTitle: row.recipe_title,
    recipeVersion: row.recipe_version,
    ...present('variant', row.variant),
    pieceUnit: row.piece_unit,
    pieces: row.pieces,
    madeMs: row.made_ms,
    madeDate: row.made_date as CalendarDate,
    ...present('setUntilMs', row.set_until_ms),
    facts: JSON.parse(row.facts) as BatchFacts,
    lots: lots.map((lot) => ({ foodId: lot.food_id, lot: lot.lot })),
  };
}

export function batchRow(workspace: string, batch: Batch): Insertable<BatchesTable> {
  return {
    workspace,
    id: batch.id,
    code: batch.code,
    event_id: batch.eventId,
    recipe_id: batch.recipeId,
    recipe_title: batch.recipeTitle,
    recipe_version: batch.recipeVersion,
    variant: batch.variant ?? null,
    piece_unit: batch.pieceUnit,
    pieces: batch.pieces,
    made_ms: batch.madeMs,
    made_date: batch.madeDate,
    set_until_ms: batch.setUntilMs ?? null,
    facts: JSON.stringify(batch.facts),
  };
}

export function holdingOf(row: Selectable<HoldingsTable>, batch: Batch, pieces: number): Holding {
  return {
    id: row.id,
    batch,
    eventId: row.event_id,
    location: row.location,
    state: row.state as HoldingState,
    sinceMs: row.since_ms,
    sinceDate: row.since_date as CalendarDate,
    ...present('daysLeft', row.days_left),
    ...present('useBy', row.use_by as CalendarDate | null),
    ...present('discardAtMs', row.discard_at_ms),
    thawed: row.thawed === 1,
    pieces,
  };
}

export function holdingRow(workspace: string, holding: NewHolding): Insertable<HoldingsTable> {
  return {
    workspace,
    id: holding.id,
    batch_id: holding.batchId,
    event_id: holding.eventId,
    location: holding.location,
    state: holding.state,
    since_ms: holding.sinceMs,
    since_date: holding.sinceDate,
    days_left: holding.daysLeft ?? null,
    use_by: holding.useBy ?? null,
    discard_at_ms: holding.discardAtMs ?? null,
    thawed: holding.thawed ? 1 : 0,
  };
}

export function readingOf(row: Selectable<ReadingsTable> & { who: string }): LoggedReading {
  return {
    eventId: row.event_id,
    who: row.who,
    location: row.location,
    atMs: row.at_ms,
    tempF: row.temp_f,
    ...present('action', row.action),
  };
}

export function readingRow(workspace: string, eventId: string, reading: Reading): Insertable<ReadingsTable> {
  return {
    workspace,
    event_id: eventId,
    location: reading.location,
    at_ms: reading.atMs,
    temp_f: reading.tempF,
    action: reading.action ?? null,
  };
}

export function openingRow(workspace: string, eventId: string, opening: Opening): Insertable<OpeningsTable> {
  return {
    workspace,
    event_id: eventId,
    food_id: opening.foodId,
    lot: opening.lot ?? null,
    opened_date: opening.openedDate,
    use_by: opening.useBy ?? null,
  };
}

export function openingOf(row: Selectable<OpeningsTable>): Opening {
  return {
    foodId: row.food_id,
    ...present('lot', row.lot),
    openedDate: row.opened_date as CalendarDate,
    ...present('useBy', row.use_by as CalendarDate | null),
  };
}
