import type { Kysely, Migration } from 'kysely';

/**
 * How each game and calendar was before and after an event, so that a person's change of them can be taken back; the
 * game a reminder hangs on; and how often a calendar was read, so that two readers of one state are told apart.
 */
export const scheduleChanges: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema
      .createTable('schedule_changes')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('event_id', 'text', (c) => c.notNull())
      // game, calendar
      .addColumn('kind', 'text', (c) => c.notNull())
      .addColumn('item_id', 'text', (c) => c.notNull())
      .addColumn('before', 'text')
      .addColumn('after', 'text')
      .addPrimaryKeyConstraint('schedule_changes_key', ['workspace', 'event_id', 'kind', 'item_id'])
      .execute();
    await db.schema.alterTable('reminders').addColumn('game_id', 'text').execute();
    await db.schema
      .createIndex('reminders_by_game')
      .on('reminders')
      .columns(['workspace', 'due_ms'])
      .where('game_id' as never, 'is not', null)
      .execute();
    await db.schema
      .alterTable('calendars')
      .addColumn('reads', 'integer', (c) => c.notNull().defaultTo(0))
      .execute();
  },
};
