import { type Kysely, type Migration, sql } from 'kysely';

/**
 * What is in each holding now, kept beside the movements it is the sum of, in the same transaction: asking for stock
 * then costs what is there, not what ever happened, and the database itself refuses a balance below zero.
 */
export const balances: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema
      .createTable('balances')
      .addColumn('workspace', 'text', (c) => c.notNull())
      .addColumn('holding_id', 'text', (c) => c.notNull())
      .addColumn('pieces', 'integer', (c) => c.notNull())
      .addPrimaryKeyConstraint('balances_key', ['workspace', 'holding_id'])
      .addCheckConstraint('balances_never_below_zero', sql`pieces >= 0`)
      .execute();
    await db.schema
      .createIndex('balances_held')
      .on('balances')
      .columns(['workspace', 'holding_id', 'pieces'])
      .where(sql<boolean>`pieces > 0`)
      .execute();
    await sql`
      insert into balances (workspace, holding_id, pieces)
      select workspace, holding_id, sum(pieces) from movements group by workspace, holding_id`.execute(db);
    // An id sorts after every id written before it, so the last entry of a person is the greatest id.
    await db.schema
      .createIndex('events_by_person_order')
      .on('events')
      .columns(['workspace', 'who', 'id'])
      .execute();
    await db.schema.dropIndex('events_by_person').execute();
  },
};
