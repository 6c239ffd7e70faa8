import type { Kysely, Updateable } from 'kysely';
import type { OutboxMessage, Reminder } from '../../kitchen/reminders/reminder.ts';
import type { Claim, ReminderQueue } from '../../kitchen/reminders/reminder-queue.ts';
import type { Database } from '../database.ts';
import { skipLocked } from '../dialect/skip-locked.ts';
import type { OutboxTable, Schema } from '../schema.ts';
import { messageOf, reminderOf } from './rows.ts';

type Outbox = Pick<
  ReminderQueue,
  'claimMessages' | 'recordSent' | 'recordRetry' | 'recordRefused' | 'giveBack' | 'withdraw'
>;

const FREE = { sending_by: null, sending_until_ms: null } as const;

/** Messages on their way out. Only who holds a row may say how it ended. */
export function outbox(database: Database, workspace: string): Outbox {
  const { db } = database;
  return {
    claimMessages: (claim) => claimMessages(database, workspace, claim),

    recordSent: (message, by, nowMs, ref) =>
      db.transaction().execute(async (trx) => {
        const ended = { state: 'sent', sent_ms: nowMs, sent_ref: ref, problem: null };
        if (!(await release(trx, message, by, ended))) return false;
        await setReminder(trx, message, { state: 'sent', sent_ms: nowMs });
        return true;
      }),

    async recordRetry(message, by, { nextAttemptMs, maybeSent, problem }) {
      await release(db, message, by, {
        state: 'waiting',
        next_attempt_ms: nextAttemptMs,
        problem,
        ...(maybeSent ? { maybe_sent: 1 } : {}),
      });
    },

    async recordRefused(message, by, problem) {
      await release(db, message, by, { state: 'refused', problem });
    },

    async giveBack(messages, by, nextAttemptMs) {
      for (const message of messages) {
        await release(db, message, by, {
          state: 'waiting',
          next_attempt_ms: nextAttemptMs,
          attempts: message.attempts - 1,
        });
      }
    },

    withdraw: (message, by) =>
      db.transaction().execute(async (trx) => {
        const { numDeletedRows } = await trx
          .deleteFrom('outbox')
          .where('id', '=', message.id)
          .where('state', '=', 'sending')
          .where('sending_by', '=', by)
          .executeTakeFirstOrThrow();
        if (numDeletedRows > 0n) await setReminder(trx, message, { state: 'pending' });
      }),
  };
}

/** One statement for the claim; what each message tells of is read after it. */
async function claimMessages(
  { db, engine }: Database,
  workspace: string,
  claim: Claim,
): Promise<OutboxMessage[]> {
  const rows = await db
    .with('due', (cte) =>
      skipLocked(
        cte
          .selectFrom('outbox')
          .select('id')
          .where('workspace', '=', workspace)
          .where('state', '=', 'waiting')
          .where('next_attempt_ms', '<=', claim.nowMs)
          .orderBy('next_attempt_ms')
          .orderBy('id')
          .limit(claim.most),
        engine,
      ),
    )
    .updateTable('outbox')
    .set((by) => ({
      state: 'sending',
      sending_by: claim.by,
      sending_until_ms: claim.nowMs + claim.leaseMs,
      attempts: by('attempts', '+', 1),
    }))
    .where('id', 'in', (by) => by.selectFrom('due').select('due.id'))
    .returningAll()
    .execute();
  const about = await remindersOf(
    db,
    rows.map((row) => row.reminder_id).filter((id) => id !== null),
  );
  return rows
    .map((row) => messageOf(row, about.get(row.reminder_id ?? '')))
    .sort((a, b) => (a.id < b.id ? -1 : 1));
}

async function remindersOf(db: Kysely<Schema>, ids: readonly string[]): Promise<Map<string, Reminder>> {
  if (ids.length === 0) return new Map();
  const rows = await db.selectFrom('reminders').selectAll().where('id', 'in', ids).execute();
  return new Map(rows.map((row) => [row.id, reminderOf(row)]));
}

/** A sender that died may have sent: its message is looked for before it is sent again. */
export async function sweepOutbox(db: Kysely<Schema>, workspace: string, nowMs: number): Promise<number> {
  const { numUpdatedRows } = await db
    .updateTable('outbox')
    .set({ ...FREE, state: 'waiting', next_attempt_ms: nowMs, maybe_sent: 1 })
    .where('workspace', '=', workspace)
    .where('state', '=', 'sending')
    .where('sending_until_ms', '<', nowMs)
    .executeTakeFirstOrThrow();
  return Number(numUpdatedRows);
}

async function release(
  db: Kysely<Schema>,
  message: OutboxMessage,
  by: string,
  ended: Updateable<OutboxTable>,
): Promise<boolean> {
  const { numUpdatedRows } = await db
    .updateTable('outbox')
    .set({ ...FREE, ...ended })
    .where('id', '=', message.id)
    .where('state', '=', 'sending')
    .where('sending_by', '=', by)
    .executeTakeFirstOrThrow();
  return numUpdatedRows > 0n;
}

async function setReminder(
  db: Kysely<Schema>,
  message: OutboxMessage,
  set: { readonly state: 'sent' | 'pending'; readonly sent_ms?: number },
): Promise<void> {
  if (!message.reminder) return;
  await db
    .updateTable('reminders')
    .set(set)
    .where('id', '=', message.reminder.id)
    .where('state', '=', 'queued')
    .execute();
}
