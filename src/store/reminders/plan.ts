import type { Kysely, Selectable, Transaction } from 'kysely';
import type { NewReminder, Replanned } from '../../kitchen/reminders/reminder-book.ts';
import type { RemindersTable, Schema } from '../schema.ts';
import { dueColumns, reminderRow } from './rows.ts';

/** Rows a statement: both engines limit the values of one statement, SQLite to 32,766. */
const AT_ONCE = 500;

/** Brings planned reminders in line with what is wanted; the caller holds the workspace's lock. */
export async function replan(
  trx: Transaction<Schema>,
  workspace: string,
  wanted: readonly NewReminder[],
  nowMs: number,
): Promise<Replanned> {
  const byKey = new Map(wanted.map((reminder) => [reminder.key, reminder]));
  const known = await knownOf(trx, workspace, [...byKey.keys()]);
  const fresh = [...byKey.values()].filter((reminder) => !known.has(reminder.key));
  await insertAll(trx, workspace, fresh, nowMs);
  let moved = 0;
  for (const [key, row] of known) {
    const now = byKey.get(key);
    if (now && differs(row, now) && mayMove(row, now, nowMs)) moved += await moveTo(trx, row, now);
  }
  return { added: fresh.length, moved, cancelled: await cancelUnwanted(trx, workspace, byKey, nowMs) };
}

/**
 * What a person changed stays; what was told stays; what is overdue stays overdue, so that it is told as late; what was
 * cancelled comes back if it is still to come.
 */
function mayMove(row: Selectable<RemindersTable>, now: NewReminder, nowMs: number): boolean {
  if (row.planned !== 1) return false;
  if (row.state === 'pending') return row.due_ms > nowMs || now.dueMs > nowMs;
  return row.state === 'cancelled' && now.dueMs >= nowMs;
}

function differs(row: Selectable<RemindersTable>, now: NewReminder): boolean {
  return (
    row.state === 'cancelled' ||
    row.due_ms !== now.dueMs ||
    row.helps_until_ms !== now.helpsUntilMs ||
    row.audience !== now.audience ||
    row.about !== JSON.stringify(now.about)
  );
}

async function moveTo(
  trx: Transaction<Schema>,
  row: Selectable<RemindersTable>,
  now: NewReminder,
): Promise<number> {
  const { numUpdatedRows } = await trx
    .updateTable('reminders')
    .set({
      ...dueColumns(now),
      about: JSON.stringify(now.about),
      audience: now.audience,
      state: 'pending',
    })
    .where('id', '=', row.id)
    .where('state', '=', row.state)
    .executeTakeFirstOrThrow();
  return Number(numUpdatedRows);
}

async function cancelUnwanted(
  trx: Transaction<Schema>,
  workspace: string,
  wanted: ReadonlyMap<string, NewReminder>,
  nowMs: number,
): Promise<number> {
  const rows = await trx
    .selectFrom('reminders')
    .select(['id', 'key'])
    .where('workspace', '=', workspace)
    .where('planned', '=', 1)
    .where('state', '=', 'pending')
    .where('due_ms', '>', nowMs)
    .execute();
  const gone = rows.filter((row) => !wanted.has(row.key)).map((row) => row.id);
  for (let start = 0; start < gone.length; start += AT_ONCE) {
    await trx
      .updateTable('reminders')
      .set({ state: 'cancelled' })
      .where('id', 'in', gone.slice(start, start + AT_ONCE))
      .where('state', '=', 'pending')
      .execute();
  }
  return gone.length;
}

async function knownOf(
  trx: Transaction<Schema>,
  workspace: string,
  keys: readonly string[],
): Promise<Map<string, Selectable<RemindersTable>>> {
  const known = new Map<string, Selectable<RemindersTable>>();
  for (let start = 0; start < keys.length; start += AT_ONCE) {
    const rows = await trx
      .selectFrom('reminders')
      .selectAll()
      .where('workspace', '=', workspace)
      .where('key', 'in', keys.slice(start, start + AT_ONCE))
      .execute();
    for (const row of rows) known.set(row.key, row);
  }
  return known;
}

/** Adds reminders with the next codes; the caller holds the workspace's lock. */
export async function insertAll(
  trx: Transaction<Schema>,
  workspace: string,
  fresh: readonly NewReminder[],
  nowMs: number,
): Promise<void> {
  if (fresh.length === 0) return;
  const last = await lastNumber(trx, workspace);
  const rows = fresh.map((reminder, at) => reminderRow(workspace, reminder, last + 1 + at, nowMs));
  for (let start = 0; start < rows.length; start += AT_ONCE) {
    await trx
      .insertInto('reminders')
      .values(rows.slice(start, start + AT_ONCE))
      .execute();
  }
}

/** Adds one unless its key is known; the row that is there then. The caller holds the workspace's lock. */
export async function insertOnce(
  trx: Transaction<Schema>,
  workspace: string,
  reminder: NewReminder,
  nowMs: number,
): Promise<Selectable<RemindersTable>> {
  const named = trx
    .selectFrom('reminders')
    .selectAll()
    .where('workspace', '=', workspace)
    .where('key', '=', reminder.key);
  const before = await named.executeTakeFirst();
  if (before) return before;
  await insertAll(trx, workspace, [reminder], nowMs);
  return named.executeTakeFirstOrThrow();
}

async function lastNumber(db: Kysely<Schema>, workspace: string): Promise<number> {
  const row = await db
    .selectFrom('reminders')
    .select('number')
    .where('workspace', '=', workspace)
    .orderBy('number', 'desc')
    .limit(1)
    .executeTakeFirst();
  return row?.number ?? 0;
}
