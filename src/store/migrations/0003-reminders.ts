import type { Kysely, Migration } from 'kysely';

export const reminders: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema
      .createTable('reminders')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('id', 'text', (c) => c.notNull().primaryKey())
      .addColumn('key', 'text', (c) => c.notNull())
      .addColumn('kind', 'text', (c) => c.notNull())
      .addColumn('audience', 'text', (c) => c.notNull())
      .addColumn('due_ms', 'bigint', (c) => c.notNull())
      .addColumn('helps_until_ms', 'bigint', (c) => c.notNull())
      .addColumn('about', 'text', (c) => c.notNull())
      .addColumn('state', 'text', (c) => c.notNull())
      .addColumn('claimed_by', 'text')
      .addColumn('claimed_until_ms', 'bigint')
      .addColumn('attempts', 'integer', (c) => c.notNull().defaultTo(0))
      .addColumn('taken_by', 'text')
      .addColumn('done_by', 'text')
      .addColumn('done_ms', 'bigint')
      .addUniqueConstraint('reminders_once', ['workspace', 'key'])
      .execute();
    // What is due is a short range of this index, however many are waiting for later.
    await db.schema.createIndex('reminders_due').on('reminders').columns(['state', 'due_ms', 'id']).execute();

    await db.schema
      .createTable('reminder_rules')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('id', 'text', (c) => c.notNull())
      .addColumn('task', 'text', (c) => c.notNull())
      .addColumn('weekdays', 'text', (c) => c.notNull())
      .addColumn('time', 'text', (c) => c.notNull())
      .addColumn('audience', 'text', (c) => c.notNull())
      .addColumn('made_by', 'text', (c) => c.notNull())
      .addPrimaryKeyConstraint('reminder_rules_key', ['workspace', 'id'])
      .execute();

    await db.schema
      .createTable('outbox')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('id', 'text', (c) => c.notNull().primaryKey())
      .addColumn('reminder_id', 'text', (c) => c.unique())
      .addColumn('audience', 'text', (c) => c.notNull())
      .addColumn('body', 'text', (c) => c.notNull())
      // waiting, sending, sent, refused
      .addColumn('state', 'text', (c) => c.notNull())
      .addColumn('next_attempt_ms', 'bigint', (c) => c.notNull())
      .addColumn('attempts', 'integer', (c) => c.notNull().defaultTo(0))
      .addColumn('sending_by', 'text')
      .addColumn('sending_until_ms', 'bigint')
      .addColumn('sent_ms', 'bigint')
      /** Where it ended up, in the surface's own words: channel and time stamp. */
      .addColumn('sent_ref', 'text')
      .addColumn('problem', 'text')
      .execute();
    await db.schema
      .createIndex('outbox_due')
      .on('outbox')
      .columns(['state', 'next_attempt_ms', 'id'])
      .execute();
  },
};
