import type { Kysely } from 'kysely';
import type { Reminder, ReminderAudience } from '../../kitchen/reminders/reminder.ts';
import type { Claim, ReminderQueue, ReminderQueues } from '../../kitchen/reminders/reminder-queue.ts';
import type { Database } from '../database.ts';
import { lockWorkspace } from '../dialect/lock-workspace.ts';
import { skipLocked } from '../dialect/skip-locked.ts';
import { newId } from '../ids.ts';
import type { Schema } from '../schema.ts';
import { withStoreProblems } from '../store-problem.ts';
import { outbox, sweepOutbox } from './outbox.ts';
import { reminderOf } from './rows.ts';

/** Reminders one list of missed ones may hold; the rest follow at the next tick. */
const MOST_MISSED = 2_000;

/** What is due in this database, one queue a workspace. */
export function reminderQueuesIn(database: Database): ReminderQueues {
  return (workspace) =>
    withStoreProblems<ReminderQueue>({
      ...outbox(database, workspace),
      claimDue: (claim) => claimDue(database, workspace, claim),
      enqueue: (reminder, by, body, nowMs) => enqueue(database, reminder, by, body, nowMs),
      reportMissed: (nowMs, compose) => reportMissed(database, workspace, nowMs, compose),
      sweep: async (nowMs) =>
        (await sweepReminders(database.db, workspace, nowMs)) +
        (await sweepOutbox(database.db, workspace, nowMs)),
      async drop(reminder, by) {
        await database.db
          .updateTable('reminders')
          .set({ state: 'cancelled', claimed_by: null, claimed_until_ms: null })
          .where('id', '=', reminder.id)
          .where('state', '=', 'claimed')
          .where('claimed_by', '=', by)
          .execute();
      },
    });
}

/** One statement: rows are picked, marked and counted as tried together. */
async function claimDue({ db, engine }: Database, workspace: string, claim: Claim) {
  const rows = await db
    .with('due', (cte) =>
      skipLocked(
        cte
          .selectFrom('reminders')
          .select('id')
          .where('workspace', '=', workspace)
          .where('state', '=', 'pending')
          .where('due_ms', '<=', claim.nowMs)
          .where('helps_until_ms', '>=', claim.nowMs)
          .orderBy('due_ms')
          .orderBy('id')
          .limit(claim.most),
        engine,
      ),
    )
    .updateTable('reminders')
    .set((by) => ({
      state: 'claimed',
      claimed_by: claim.by,
      claimed_until_ms: claim.nowMs + claim.leaseMs,
      attempts: by('attempts', '+', 1),
    }))
    .where('id', 'in', (by) => by.selectFrom('due').select('due.id'))
    .returningAll()
    .execute();
  return rows.map(reminderOf).sort((a, b) => a.dueMs - b.dueMs || (a.id < b.id ? -1 : 1));
}

async function sweepReminders(db: Kysely<Schema>, workspace: string, nowMs: number): Promise<number> {
  const { numUpdatedRows } = await db
    .updateTable('reminders')
    .set({ state: 'pending', claimed_by: null, claimed_until_ms: null })
    .where('workspace', '=', workspace)
    .where('state', '=', 'claimed')
    .where('claimed_until_ms', '<', nowMs)
    .executeTakeFirstOrThrow();
  return Number(numUpdatedRows);
}

function enqueue(
  { db }: Database,
  reminder: Reminder,
  by: string,
  body: string,
  nowMs: number,
): Promise<boolean> {
  return db.transaction().execute(async (trx) => {
    const { numUpdatedRows } = await trx
      .updateTable('reminders')
      .set({ state: 'queued', claimed_by: null, claimed_until_ms: null })
      .where('id', '=', reminder.id)
      .where('state', '=', 'claimed')
      .where('claimed_by', '=', by)
      .executeTakeFirstOrThrow();
    if (numUpdatedRows === 0n) return false;
    const { workspace, audience } = reminder;
    await putMessage(trx, { workspace, audience, body, reminderId: reminder.id, nowMs });
    return true;
  });
}

interface NewMessage {
  readonly workspace: string;
  readonly audience: ReminderAudience;
  readonly body: string;
  readonly nowMs: number;
  readonly reminderId?: string;
}

async function putMessage(db: Kysely<Schema>, message: NewMessage): Promise<void> {
  await db
    .insertInto('outbox')
    .values({
      workspace: message.workspace,
      id: newId(message.nowMs),
      reminder_id: message.reminderId ?? null,
      audience: message.audience,
      body: message.body,
      state: 'waiting',
      next_attempt_ms: message.nowMs,
      sending_by: null,
      sending_until_ms: null,
      sent_ms: null,
      sent_ref: null,
      problem: null,
    })
    .execute();
}

/** Under the workspace's lock, so that several instances write one list and not one each. */
function reportMissed(
  { db, engine }: Database,
  workspace: string,
  nowMs: number,
  compose: Parameters<ReminderQueue['reportMissed']>[1],
): Promise<number> {
  return db.transaction().execute(async (trx) => {
    await lockWorkspace(trx, engine, workspace);
    const rows = await trx
      .selectFrom('reminders')
      .selectAll()
      .where('workspace', '=', workspace)
      .where('state', '=', 'pending')
      .where('due_ms', '<=', nowMs)
      .where('helps_until_ms', '<', nowMs)
      .orderBy('due_ms')
      .limit(MOST_MISSED)
      .execute();
    const byAudience = new Map<ReminderAudience, Reminder[]>();
    for (const row of rows) {
      const { numUpdatedRows } = await trx
        .updateTable('reminders')
        .set({ state: 'missed' })
        .where('id', '=', row.id)
        .where('state', '=', 'pending')
        .executeTakeFirstOrThrow();
      const missed = reminderOf(row);
      if (numUpdatedRows === 0n) continue;
      byAudience.set(missed.audience, [...(byAudience.get(missed.audience) ?? []), missed]);
    }
    for (const [audience, missed] of byAudience) {
      await putMessage(trx, { workspace, audience, body: compose(audience, missed), nowMs });
    }
    return rows.length;
  });
}
