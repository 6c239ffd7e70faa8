import type { Kysely, Migration } from 'kysely';

/** What each person eats and avoids. */
export const roster: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema
      .createTable('people')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('code', 'text', (c) => c.notNull())
      .addColumn('member', 'text')
      .addColumn('team', 'text')
      .addColumn('avoid', 'text', (c) => c.notNull())
      .addColumn('foods', 'text', (c) => c.notNull())
      .addColumn('likes', 'text', (c) => c.notNull())
      .addColumn('pieces', 'integer')
      .addColumn('told_by', 'text', (c) => c.notNull())
      .addColumn('updated_ms', 'bigint', (c) => c.notNull())
      .addPrimaryKeyConstraint('people_key', ['workspace', 'code'])
      .execute();
    await db.schema.createIndex('people_by_member').on('people').columns(['workspace', 'member']).execute();
  },
};
