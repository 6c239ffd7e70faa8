import type { Kysely, Migration } from 'kysely';

/** What is on the pantry shelf, what it costs, labels that changed, and the list of things to buy. */
export const pantry: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema
      .createTable('pantry_movements')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('event_id', 'text', (c) => c.notNull())
      .addColumn('food_id', 'text', (c) => c.notNull())
      .addColumn('lot', 'text', (c) => c.notNull())
      .addColumn('mass_mg', 'bigint', (c) => c.notNull())
      .addColumn('cents', 'bigint')
      .addPrimaryKeyConstraint('pantry_movements_key', ['workspace', 'event_id', 'food_id', 'lot'])
      .execute();
    await db.schema
      .createTable('pantry_balances')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('food_id', 'text', (c) => c.notNull())
      .addColumn('lot', 'text', (c) => c.notNull())
      .addColumn('mass_mg', 'bigint', (c) => c.notNull())
      .addColumn('first_event_id', 'text', (c) => c.notNull())
      .addPrimaryKeyConstraint('pantry_balances_key', ['workspace', 'food_id', 'lot'])
      .execute();
    await db.schema
      .createTable('prices')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('event_id', 'text', (c) => c.notNull())
      .addColumn('food_id', 'text', (c) => c.notNull())
      .addColumn('cents', 'bigint', (c) => c.notNull())
      .addColumn('package_mg', 'bigint', (c) => c.notNull())
      .addColumn('package_name', 'text', (c) => c.notNull())
      .addPrimaryKeyConstraint('prices_key', ['workspace', 'event_id', 'food_id'])
      .execute();
    await db.schema
      .createTable('label_notes')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('event_id', 'text', (c) => c.notNull())
      .addColumn('food_id', 'text', (c) => c.notNull())
      .addColumn('state', 'text', (c) => c.notNull())
      .addColumn('contains', 'text', (c) => c.notNull())
      .addColumn('advisory', 'text', (c) => c.notNull())
      .addPrimaryKeyConstraint('label_notes_key', ['workspace', 'event_id', 'food_id'])
      .execute();
    await db.schema
      .createTable('list_notes')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('event_id', 'text', (c) => c.notNull())
      .addColumn('name', 'text', (c) => c.notNull())
      .addColumn('food_id', 'text')
      .addColumn('mass_mg', 'bigint')
      .addColumn('wanted', 'integer', (c) => c.notNull())
      .addPrimaryKeyConstraint('list_notes_key', ['workspace', 'event_id', 'name'])
      .execute();
  },
};
