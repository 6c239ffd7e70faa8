import type { Kysely, Migration } from 'kysely';

export const ledger: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema
      .createTable('events')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('id', 'text', (c) => c.notNull())
      .addColumn('kind', 'text', (c) => c.notNull())
      .addColumn('who', 'text', (c) => c.notNull())
      .addColumn('at_ms', 'bigint', (c) => c.notNull())
      .addColumn('recorded_ms', 'bigint', (c) => c.notNull())
      .addColumn('request_key', 'text')
      .addColumn('reverses', 'text')
      .addColumn('note', 'text')
      .addPrimaryKeyConstraint('events_key', ['workspace', 'id'])
      .addUniqueConstraint('events_request_once', ['workspace', 'request_key'])
      .addUniqueConstraint('events_reversed_once', ['workspace', 'reverses'])
      .execute();
    await db.schema
      .createIndex('events_by_person')
      .on('events')
      .columns(['workspace', 'who', 'recorded_ms'])
      .execute();
    await db.schema.createIndex('events_by_time').on('events').columns(['workspace', 'at_ms']).execute();

    await db.schema
      .createTable('batches')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('id', 'text', (c) => c.notNull())
      .addColumn('code', 'text', (c) => c.notNull())
      .addColumn('event_id', 'text', (c) => c.notNull())
      .addColumn('recipe_id', 'text', (c) => c.notNull())
      .addColumn('recipe_title', 'text', (c) => c.notNull())
      .addColumn('recipe_version', 'text', (c) => c.notNull())
      .addColumn('variant', 'text')
      .addColumn('piece_unit', 'text', (c) => c.notNull())
      .addColumn('pieces', 'integer', (c) => c.notNull())
      .addColumn('made_ms', 'bigint', (c) => c.notNull())
      .addColumn('made_date', 'text', (c) => c.notNull())
      .addColumn('set_until_ms', 'bigint')
      .addColumn('facts', 'text', (c) => c.notNull())
      .addPrimaryKeyConstraint('batches_key', ['workspace', 'id'])
      .addUniqueConstraint('batches_code', ['workspace', 'code'])
      .execute();
    await db.schema
      .createIndex('batches_by_date')
      .on('batches')
      .columns(['workspace', 'made_date'])
      .execute();

    await db.schema
      .createTable('batch_lots')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('batch_id', 'text', (c) => c.notNull())
      .addColumn('food_id', 'text', (c) => c.notNull())
      .addColumn('lot', 'text', (c) => c.notNull())
      .addPrimaryKeyConstraint('batch_lots_key', ['workspace', 'lot', 'food_id', 'batch_id'])
      .execute();

    await db.schema
      .createTable('holdings')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('id', 'text', (c) => c.notNull())
      .addColumn('batch_id', 'text', (c) => c.notNull())
      .addColumn('event_id', 'text', (c) => c.notNull())
      .addColumn('location', 'text', (c) => c.notNull())
      .addColumn('state', 'text', (c) => c.notNull())
      .addColumn('since_ms', 'bigint', (c) => c.notNull())
      .addColumn('since_date', 'text', (c) => c.notNull())
      .addColumn('days_left', 'integer')
      .addColumn('use_by', 'text')
      .addColumn('discard_at_ms', 'bigint')
      .addColumn('thawed', 'integer', (c) => c.notNull())
      .addPrimaryKeyConstraint('holdings_key', ['workspace', 'id'])
      .execute();
    await db.schema
      .createIndex('holdings_by_batch')
      .on('holdings')
      .columns(['workspace', 'batch_id'])
      .execute();

    await db.schema
      .createTable('movements')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('event_id', 'text', (c) => c.notNull())
      .addColumn('holding_id', 'text', (c) => c.notNull())
      .addColumn('pieces', 'integer', (c) => c.notNull())
      .addPrimaryKeyConstraint('movements_key', ['workspace', 'event_id', 'holding_id'])
      .execute();
    // Covers the sum that every balance is: no row of the table itself is read.
    await db.schema
      .createIndex('movements_by_holding')
      .on('movements')
      .columns(['workspace', 'holding_id', 'pieces'])
      .execute();

    await db.schema
      .createTable('readings')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('event_id', 'text', (c) => c.notNull())
      .addColumn('location', 'text', (c) => c.notNull())
      .addColumn('at_ms', 'bigint', (c) => c.notNull())
      .addColumn('temp_f', 'double precision', (c) => c.notNull())
      .addColumn('action', 'text')
      .addPrimaryKeyConstraint('readings_key', ['workspace', 'event_id', 'location', 'at_ms'])
      .execute();
    await db.schema
      .createIndex('readings_by_place')
      .on('readings')
      .columns(['workspace', 'location', 'at_ms'])
      .execute();

    await db.schema
      .createTable('openings')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('event_id', 'text', (c) => c.notNull())
      .addColumn('food_id', 'text', (c) => c.notNull())
      .addColumn('lot', 'text')
      .addColumn('opened_date', 'text', (c) => c.notNull())
      .addColumn('use_by', 'text')
      .addPrimaryKeyConstraint('openings_key', ['workspace', 'event_id', 'food_id'])
      .execute();
  },
};
