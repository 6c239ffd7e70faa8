import type { Kysely, Migration } from 'kysely';

/** What a game was before, what its calendar last said of it, and what is made for it. */
export const gameChanges: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema.alterTable('games').addColumn('recipe_id', 'text').execute();
    await db.schema.alterTable('games').addColumn('was', 'text').execute();
    await db.schema.alterTable('games').addColumn('calendar_says', 'text').execute();
    await db.schema.alterTable('games').addColumn('missing_ms', 'bigint').execute();
  },
};
