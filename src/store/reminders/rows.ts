import type { Insertable, Selectable } from 'kysely';
import type {
  OutboxMessage,
  Reminder,
  ReminderAudience,
  ReminderKind,
  ReminderRule,
  ReminderState,
  ReminderWall,
} from '../../kitchen/reminders/reminder.ts';
import type { NewReminder } from '../../kitchen/reminders/reminder-book.ts';
import type { CalendarDate, ClockTime } from '../../kitchen/time/zone.ts';
import { newId } from '../ids.ts';
import { present } from '../present.ts';
import type { OutboxTable, ReminderRulesTable, RemindersTable } from '../schema.ts';

export function reminderOf(row: Selectable<RemindersTable>): Reminder {
  return {
    id: row.id,
    workspace: row.workspace,
    key: row.key,
    code: `R${row.number}`,
    kind: row.kind as ReminderKind,
    audience: row.audience as ReminderAudience,
    dueMs: row.due_ms,
    helpsUntilMs: row.helps_until_ms,
    about: JSON.parse(row.about) as Reminder['about'],
    state: row.state as ReminderState,
    planned: row.planned === 1,
    ...present('wall', wallOf(row)),
    ...present('sentMs', row.sent_ms),
    ...present('takenBy', row.taken_by),
    ...present('doneBy', row.done_by),
    ...present('doneMs', row.done_ms),
  };
}

function wallOf({ wall, zone }: Selectable<RemindersTable>): ReminderWall | null {
  if (wall === null || zone === null) return null;
  return { date: wall.slice(0, 10) as CalendarDate, time: wall.slice(11) as ClockTime, zone };
}

export function reminderRow(
  workspace: string,
  reminder: NewReminder,
  number: number,
  nowMs: number,
): Insertable<RemindersTable> {
  return {
    workspace,
    id: newId(nowMs),
    key: reminder.key,
    number,
    kind: reminder.kind,
    audience: reminder.audience,
    state: 'pending',
    ...dueColumns(reminder),
    about: JSON.stringify(reminder.about),
    planned: reminder.planned ? 1 : 0,
    claimed_by: null,
    claimed_until_ms: null,
    taken_by: null,
    done_by: null,
    done_ms: null,
    sent_ms: null,
    game_id: gameOf(reminder),
  };
}

/** What a person set before a game hangs on it; what the planner makes of a game is found by its key. */
const gameOf = ({ kind, about }: NewReminder): string | null =>
  kind === 'own' && typeof about.gameId === 'string' ? about.gameId : null;

/** When it is due, as columns. */
export function dueColumns({
  dueMs,
  helpsUntilMs,
  wall,
}: {
  readonly dueMs: number;
  readonly helpsUntilMs: number;
  readonly wall?: ReminderWall;
}): Pick<Insertable<RemindersTable>, 'due_ms' | 'helps_until_ms' | 'wall' | 'zone'> {
  return {
    due_ms: dueMs,
    helps_until_ms: helpsUntilMs,
    wall: wall ? `${wall.date}T${wall.time}` : null,
    zone: wall?.zone ?? null,
  };
}

export function messageOf(row: Selectable<OutboxTable>, reminder: Reminder | undefined): OutboxMessage {
  return {
    id: row.id,
    workspace: row.workspace,
    ...(reminder ? { reminder } : {}),
    audience: row.audience as ReminderAudience,
    body: row.body,
    attempts: row.attempts,
    maybeSent: row.maybe_sent === 1,
  };
}

export function ruleOf(row: Selectable<ReminderRulesTable>): ReminderRule {
  return {
    id: row.id,
    task: row.task,
    weekdays: row.weekdays.split(',').map(Number),
    time: row.time as ClockTime,
    audience: row.audience as ReminderAudience,
    madeBy: row.made_by,
  };
}
