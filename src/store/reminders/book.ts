import type { Kysely } from 'kysely';
import type { NewReminder, ReminderBook, ReminderBooks } from '../../kitchen/reminders/reminder-book.ts';
import type { Database } from '../database.ts';
import { lockWorkspace } from '../dialect/lock-workspace.ts';
import { newId } from '../ids.ts';
import type { Schema } from '../schema.ts';
import { withStoreProblems } from '../store-problem.ts';
import { insertOnce, replan } from './plan.ts';
import { dueColumns, reminderOf, ruleOf } from './rows.ts';

/** A message that went to several people at once stands in several places. */
const PLACES_APART = ', ';
/** More than a kitchen can have open at once. */
const MOST_OPEN = 200;
/** Nothing helps longer than this after it was due, so what was told earlier need not be looked through. */
const LONGEST_HELP_MS = 14 * 24 * 3_600_000;

/** The reminders kept in this database, one book a workspace. */
export function reminderBooksIn(database: Database): ReminderBooks {
  return (workspace) =>
    withStoreProblems<ReminderBook>({
      ...asking(database.db, workspace),
      ...telling(database.db, workspace),
      ...rules(database.db, workspace),
      plan: (wanted, nowMs) =>
        database.db.transaction().execute(async (trx) => {
          await lockWorkspace(trx, database.engine, workspace);
          return replan(trx, workspace, wanted, nowMs);
        }),
      add: (reminder, nowMs) => add(database, workspace, reminder, nowMs),
    });
}

function add({ db, engine }: Database, workspace: string, reminder: NewReminder, nowMs: number) {
  return db.transaction().execute(async (trx) => {
    await lockWorkspace(trx, engine, workspace);
    return reminderOf(await insertOnce(trx, workspace, reminder, nowMs));
  });
}

function asking(
  db: Kysely<Schema>,
  workspace: string,
): Pick<
  ReminderBook,
  'byKey' | 'byCode' | 'upcoming' | 'open' | 'tied' | 'undelivered' | 'offZone' | 'toldAt'
> {
  const all = db.selectFrom('reminders').selectAll('reminders').where('reminders.workspace', '=', workspace);
  return {
    async byKey(key) {
      const row = await all.where('key', '=', key).executeTakeFirst();
      return row && reminderOf(row);
    },

    async byCode(code) {
      const number = /^r(\d{1,9})$/i.exec(code.trim())?.[1];
      if (number === undefined) return undefined;
      const row = await all.where('number', '=', Number(number)).executeTakeFirst();
      return row && reminderOf(row);
    },

    async upcoming(most) {
      const rows = await all
        .where('state', '=', 'pending')
        .orderBy('due_ms')
        .orderBy('number')
        .limit(most)
        .execute();
      return rows.map(reminderOf);
    },

    async open(nowMs) {
      const rows = await all
        .where('state', '=', 'sent')
        .where('done_ms', 'is', null)
        .where('due_ms', '>', nowMs - LONGEST_HELP_MS)
        .where('helps_until_ms', '>', nowMs)
        .orderBy('due_ms', 'desc')
        .limit(MOST_OPEN)
        .execute();
      return rows.map(reminderOf).sort((a, b) => (b.sentMs ?? 0) - (a.sentMs ?? 0));
    },

    async tied(nowMs) {
      const rows = await all
        .where('game_id', 'is not', null)
        .where('planned', '=', 1)
        .where('due_ms', '>', nowMs - LONGEST_HELP_MS)
        .orderBy('due_ms')
        .limit(MOST_OPEN)
        .execute();
      return rows.map(reminderOf);
    },

    async undelivered(sinceMs) {
      const rows = await all
        .innerJoin('outbox', 'outbox.reminder_id', 'reminders.id')
        .select('outbox.problem')
        .where('outbox.workspace', '=', workspace)
        .where('outbox.state', '=', 'refused')
        .where('reminders.due_ms', '>=', sinceMs)
        .orderBy('reminders.due_ms', 'desc')
        .limit(MOST_OPEN)
        .execute();
      return rows.map(({ problem, ...row }) => ({ reminder: reminderOf(row), problem: problem ?? '' }));
    },

    async toldAt(id) {
      const rows = await db
        .selectFrom('outbox')
        .select('sent_ref')
        .where('workspace', '=', workspace)
        .where('reminder_id', '=', id)
        .where('state', '=', 'sent')
        .orderBy('id')
        .execute();
      return rows.flatMap((row) => row.sent_ref?.split(PLACES_APART) ?? []);
    },

    async offZone(zone) {
      const rows = await all.where('state', '=', 'pending').where('zone', '!=', zone).execute();
      return rows.map(reminderOf);
    },
  };
}

function telling(
  db: Kysely<Schema>,
  workspace: string,
): Pick<ReminderBook, 'take' | 'done' | 'cancel' | 'move'> {
  const one = (id: string) =>
    db.updateTable('reminders').where('workspace', '=', workspace).where('id', '=', id);
  return {
    async take(id, who) {
      const { numUpdatedRows } = await one(id)
        .set({ taken_by: who })
        .where((by) => by.or([by('taken_by', 'is', null), by('taken_by', '=', who)]))
        .executeTakeFirstOrThrow();
      return numUpdatedRows > 0n;
    },

    async done(id, who, nowMs) {
      await one(id).set({ done_by: who, done_ms: nowMs }).where('done_ms', 'is', null).execute();
      // Done before it was due: there is nothing to remind of any more.
      await one(id).set({ state: 'cancelled', planned: 0 }).where('state', '=', 'pending').execute();
    },

    async cancel(id, who) {
      const { numUpdatedRows } = await one(id)
        .set({ state: 'cancelled', planned: 0, taken_by: who })
        .where('state', '=', 'pending')
        .executeTakeFirstOrThrow();
      return numUpdatedRows > 0n;
    },

    async move(id, time, keptBy) {
      const { numUpdatedRows } = await one(id)
        .set({ ...dueColumns(time), ...(keptBy === 'person' ? { planned: 0 } : {}) })
        .where('state', '=', 'pending')
        .executeTakeFirstOrThrow();
      return numUpdatedRows > 0n;
    },
  };
}

function rules(
  db: Kysely<Schema>,
  workspace: string,
): Pick<ReminderBook, 'rules' | 'addRule' | 'removeRule'> {
  return {
    async rules() {
      const rows = await db
        .selectFrom('reminder_rules')
        .selectAll()
        .where('workspace', '=', workspace)
        .orderBy('id')
        .execute();
      return rows.map(ruleOf);
    },

    async addRule(rule, nowMs) {
      const id = newId(nowMs);
      await db
        .insertInto('reminder_rules')
        .values({
          workspace,
          id,
          task: rule.task,
          weekdays: rule.weekdays.join(','),
          time: rule.time,
          audience: rule.audience,
          made_by: rule.madeBy,
        })
        .execute();
      return { ...rule, id };
    },

    async removeRule(id) {
      await db.deleteFrom('reminder_rules').where('workspace', '=', workspace).where('id', '=', id).execute();
    },
  };
}
