import { type Kysely, sql } from 'kysely';
import type { LabelState, PantryView, StatedPrice, ToldItem, ToldLabel } from '../kitchen/pantry/pantry.ts';
import { inParts } from './in-parts.ts';
import { notReversed } from './not-reversed.ts';
import { present } from './present.ts';
import type { Schema } from './schema.ts';

const MG = 1_000;

/** Reads one workspace's pantry through `db`, which may be a transaction. */
export function pantryView(db: Kysely<Schema>, workspace: string): PantryView {
  /** Rows of a table whose event stands, with when and by whom; oldest first. */
  const standing = (table: 'prices' | 'label_notes' | 'list_notes') =>
    db
      .selectFrom(`${table} as t` as 'prices as t')
      .innerJoin('events as e', (join) =>
        join.onRef('e.workspace', '=', 't.workspace').onRef('e.id', '=', 't.event_id'),
      )
      .where('t.workspace', '=', workspace)
      .where(notReversed(workspace, 't.event_id'))
      .orderBy('e.id')
      .select(['e.at_ms', 'e.who']);

  return {
    async pantry() {
      const rows = await db
        .selectFrom('pantry_balances')
        .select(['food_id', 'lot', 'mass_mg'])
        .where('workspace', '=', workspace)
        .where(sql<boolean>`mass_mg > 0`)
        .orderBy('first_event_id')
        .orderBy('food_id')
        .execute();
      return rows.map((row) => ({ foodId: row.food_id, ...lotOf(row.lot), massG: row.mass_mg / MG }));
    },

    async pantryMovementsOf(eventIds) {
      const rows = await inParts(eventIds, (part) =>
        db
          .selectFrom('pantry_movements')
          .selectAll()
          .where('workspace', '=', workspace)
          .where('event_id', 'in', part)
          .orderBy('event_id')
          .execute(),
      );
      return rows.map((row) => ({
        eventId: row.event_id,
        foodId: row.food_id,
        ...lotOf(row.lot),
        massG: row.mass_mg / MG,
        ...present('cents', row.cents),
      }));
    },

    async pantryMoved({ foodId, lot, afterMs }) {
      let query = db
        .selectFrom('pantry_movements as m')
        .innerJoin('events as e', (join) =>
          join.onRef('e.workspace', '=', 'm.workspace').onRef('e.id', '=', 'm.event_id'),
        )
        .select(['m.event_id', 'm.food_id', 'm.lot', 'm.mass_mg', 'e.at_ms'])
        .where('m.workspace', '=', workspace)
        .where('e.kind', '!=', 'undone')
        .where(notReversed(workspace, 'm.event_id'))
        .orderBy('e.at_ms')
        .orderBy('e.id');
      if (foodId !== undefined) query = query.where('m.food_id', '=', foodId);
      if (lot !== undefined) query = query.where(sql`lower(m.lot)`, '=', lot.toLowerCase());
      if (afterMs !== undefined) query = query.where('e.at_ms', '>', afterMs);
      const rows = await query.execute();
      return rows.map((row) => ({
        eventId: row.event_id,
        foodId: row.food_id,
        ...lotOf(row.lot),
        massG: row.mass_mg / MG,
        atMs: row.at_ms,
      }));
    },

    async pantryFoods() {
      const rows = await db
        .selectFrom('pantry_balances')
        .select('food_id')
        .distinct()
        .where('workspace', '=', workspace)
        .execute();
      return new Set(rows.map((row) => row.food_id));
    },

    async prices() {
      const rows = await standing('prices')
        .select(['t.food_id', 't.cents', 't.package_mg', 't.package_name'])
        .execute();
      const latest = new Map<string, StatedPrice>();
      for (const row of rows) {
        latest.set(row.food_id, {
          foodId: row.food_id,
          priceCents: row.cents,
          packageG: row.package_mg / MG,
          packageName: row.package_name,
          atMs: row.at_ms,
        });
      }
      return [...latest.values()];
    },

    async labelNotes() {
      const rows = await standing('label_notes')
        .select(sql<string>`t.food_id`.as('food_id'))
        .select(sql<string>`t.state`.as('state'))
        .select(sql<string>`t.contains`.as('contains'))
        .select(sql<string>`t.advisory`.as('advisory'))
        .select('e.id as event_id')
        .execute();
      return rows.map((row) => ({
        foodId: row.food_id,
        state: row.state as LabelState,
        contains: JSON.parse(row.contains) as ToldLabel['contains'],
        advisory: JSON.parse(row.advisory) as ToldLabel['advisory'],
        eventId: row.event_id,
        who: row.who,
        atMs: row.at_ms,
      }));
    },

    async listNotes() {
      const rows = await standing('list_notes')
        .select(sql<string>`t.name`.as('name'))
        .select(sql<string | null>`t.food_id`.as('food_id'))
        .select(sql<number | null>`t.mass_mg`.as('mass_mg'))
        .select(sql<number>`t.wanted`.as('wanted'))
        .execute();
      return rows.map(
        (row): ToldItem => ({
          name: row.name,
          ...present('foodId', row.food_id),
          ...present('massG', row.mass_mg === null ? null : row.mass_mg / MG),
          wanted: row.wanted === 1,
          who: row.who,
          atMs: row.at_ms,
        }),
      );
    },
  };
}

/** A lot nobody told is the empty text in the tables, so that it can be part of a key. */
const lotOf = (lot: string): { lot?: string } => (lot === '' ? {} : { lot });
