import type { Kysely, Migration } from 'kysely';

/** Workspaces that let us in, what was claimed by an instance, and installs that were begun. */
export const workspaces: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema
      .createTable('installations')
      .addColumn('workspace', 'text', (c) => c.notNull().primaryKey())
      .addColumn('installed_by', 'text')
      .addColumn('installed_ms', 'bigint', (c) => c.notNull())
      .addColumn('credentials', 'text', (c) => c.notNull())
      .addColumn('key_name', 'text', (c) => c.notNull())
      .execute();

    await db.schema
      .createTable('claims')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('key_hash', 'text', (c) => c.notNull())
      .addColumn('until_ms', 'bigint', (c) => c.notNull())
      .addPrimaryKeyConstraint('claims_key', ['workspace', 'key_hash'])
      .execute();
    await db.schema.createIndex('claims_until').on('claims').columns(['until_ms']).execute();

    await db.schema
      .createTable('installs_begun')
      .addColumn('state_hash', 'text', (c) => c.notNull().primaryKey())
      .addColumn('options', 'text', (c) => c.notNull())
      .addColumn('until_ms', 'bigint', (c) => c.notNull())
      .execute();
  },
};
