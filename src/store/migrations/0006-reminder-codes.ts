import type { Kysely, Migration } from 'kysely';

/** Codes people can say, who keeps a reminder, the wall time it hangs on; and due rows found within one workspace. */
export const reminderCodes: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await addToReminders(db, 'number', 'integer', 0);
    await addToReminders(db, 'planned', 'integer', 0);
    await db.schema.alterTable('reminders').addColumn('wall', 'text').execute();
    await db.schema.alterTable('reminders').addColumn('zone', 'text').execute();
    await db.schema.alterTable('reminders').addColumn('sent_ms', 'bigint').execute();
    await db.schema
      .alterTable('outbox')
      .addColumn('maybe_sent', 'integer', (c) => c.notNull().defaultTo(0))
      .execute();

    await db.schema
      .createIndex('reminders_by_number')
      .on('reminders')
      .columns(['workspace', 'number'])
      .execute();
    // A terminal and a Slack workspace may share a database: what waits for one must not be walked over by the other.
    await db.schema.dropIndex('reminders_due').execute();
    await db.schema
      .createIndex('reminders_due')
      .on('reminders')
      .columns(['workspace', 'state', 'due_ms', 'id'])
      .execute();
    await db.schema
      .createIndex('reminders_planned')
      .on('reminders')
      .columns(['workspace', 'planned', 'state', 'due_ms'])
      .execute();
    await db.schema.dropIndex('outbox_due').execute();
    await db.schema
      .createIndex('outbox_due')
      .on('outbox')
      .columns(['workspace', 'state', 'next_attempt_ms', 'id'])
      .execute();
  },
};

async function addToReminders(
  db: Kysely<unknown>,
  name: string,
  type: 'integer',
  value: number,
): Promise<void> {
  await db.schema
    .alterTable('reminders')
    .addColumn(name, type, (c) => c.notNull().defaultTo(value))
    .execute();
}
