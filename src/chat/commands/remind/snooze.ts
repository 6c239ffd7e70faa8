import type { Reminder } from '../../../kitchen/reminders/reminder.ts';
import { instantOf } from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Due } from './due.ts';
import { type Room, sayDue } from './room.ts';

/**
 * A snooze only puts off: minutes count from when the reminder comes, or from now when that is past.
 * @throws Problem `not_possible` for a time before it comes anyway.
 */
export function putOff(
  reminder: Reminder,
  due: Extract<Due, { kind: 'in' | 'at' }>,
  room: Room,
): Extract<Due, { kind: 'in' | 'at' }> {
  const { nowMs, zone } = room;
  if (reminder.state !== 'pending' || reminder.dueMs <= nowMs) return due;
  if (due.kind === 'in') return { kind: 'in', dueMs: reminder.dueMs + (due.dueMs - wholeMinute(nowMs)) };
  if (instantOf(due, zone) > reminder.dueMs) return due;
  throw new Problem(
    'not_possible',
    `${reminder.code} comes ${sayDue(reminder, room)} anyway; a snooze only puts off.`,
    `For later say "snooze ${reminder.code} 30 min"; for earlier, "move ${reminder.code} to ${due.date} ${due.time}".`,
  );
}

/** As the clock is looked at: `in 20 min` counts from the nearest minute. */
const wholeMinute = (nowMs: number): number => Math.round(nowMs / 60_000) * 60_000;
