import type { Kysely, Migration } from 'kysely';

export const games: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema
      .createTable('games')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('id', 'text', (c) => c.notNull())
      .addColumn('calendar_id', 'text')
      .addColumn('uid', 'text', (c) => c.notNull())
      .addColumn('recurrence_id', 'text')
      .addColumn('sequence', 'integer', (c) => c.notNull())
      .addColumn('stamp_ms', 'bigint')
      .addColumn('title', 'text', (c) => c.notNull())
      .addColumn('sport', 'text')
      .addColumn('opponent', 'text')
      .addColumn('side', 'text')
      .addColumn('place', 'text')
      .addColumn('local_date', 'text', (c) => c.notNull())
      .addColumn('local_time', 'text')
      .addColumn('time_zone', 'text', (c) => c.notNull())
      .addColumn('departs_ms', 'bigint')
      .addColumn('people', 'integer')
      .addColumn('status', 'text', (c) => c.notNull())
      .addColumn('updated_ms', 'bigint', (c) => c.notNull())
      .addPrimaryKeyConstraint('games_key', ['workspace', 'id'])
      .execute();
    await db.schema.createIndex('games_by_date').on('games').columns(['workspace', 'local_date']).execute();
    await db.schema
      .createIndex('games_by_calendar')
      .on('games')
      .columns(['workspace', 'calendar_id'])
      .execute();
    await db.schema
      .createTable('calendars')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('id', 'text', (c) => c.notNull())
      .addColumn('name', 'text', (c) => c.notNull())
      .addColumn('url', 'text')
      .addColumn('etag', 'text')
      .addColumn('read_ms', 'bigint')
      .addColumn('next_read_ms', 'bigint')
      .addColumn('problem', 'text')
      .addPrimaryKeyConstraint('calendars_key', ['workspace', 'id'])
      .execute();
  },
};
