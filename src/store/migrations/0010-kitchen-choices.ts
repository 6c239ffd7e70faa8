import type { Kysely, Migration } from 'kysely';

/** What staff decided over the kitchen's own settings, one row a workspace. */
export const kitchenChoices: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema
      .createTable('kitchen_choices')
      .addColumn('workspace', 'text', (c) => c.primaryKey())
      .addColumn('choices', 'text', (c) => c.notNull())
      .addColumn('told_by', 'text', (c) => c.notNull())
      .addColumn('updated_ms', 'bigint', (c) => c.notNull())
      .execute();
  },
};
