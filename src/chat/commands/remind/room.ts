import { kitchenState, type PlanningBooks, replanReminders } from '../../../kitchen/reminders/planner.ts';
import type { Reminder } from '../../../kitchen/reminders/reminder.ts';
import { sayInstant } from '../../../kitchen/time/zone.ts';
import type { Answer } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { reminderName } from '../../reminders/words.ts';

/** The asker's books and the kitchen's settings, for everything about reminders. */
export interface Room {
  readonly books: PlanningBooks;
  readonly asked: Asked;
  readonly nowMs: number;
  readonly zone: string;
  readonly who: string;
}

export function roomOf(asked: Asked): Room {
  const { kitchen, request } = asked;
  const { workspace, who } = request.asker;
  return {
    books: {
      ledger: kitchen.ledgers(workspace),
      games: kitchen.games(workspace),
      reminders: kitchen.reminders(workspace),
    },
    asked,
    nowMs: request.nowMs,
    zone: kitchen.book.settings.timeZone,
    who,
  };
}

export const replanned = ({ books, asked, nowMs }: Room): Promise<unknown> =>
  replanReminders(books, asked.kitchen.book, nowMs);

/** Names need the games they speak of. */
export async function namer({ books, asked, nowMs }: Room): Promise<(reminder: Reminder) => string> {
  const state = await kitchenState(books, asked.kitchen.book, nowMs);
  return (reminder) => reminderName(reminder, state);
}

export const sayDue = (reminder: Pick<Reminder, 'dueMs'>, { zone }: Room): string =>
  sayInstant(reminder.dueMs, zone);

export function answerOf(title: string, more: Partial<Answer> = {}): Answer {
  return { title, sections: [], cautions: [], next: [], audience: 'channel', data: {}, ...more };
}

export const saying = (...says: readonly string[]): Answer['next'] =>
  says.map((each) => ({ label: each, says: each }));

export const dataOf = (reminder: Reminder, room: Room): Record<string, unknown> => ({
  reminder: reminder.code,
  kind: reminder.kind,
  dueMs: reminder.dueMs,
  due: sayDue(reminder, room),
  audience: reminder.audience,
  state: reminder.state,
  ...(reminder.kind === 'own' ? { task: reminder.about.task } : {}),
  ...(reminder.takenBy === undefined ? {} : { takenBy: reminder.takenBy }),
});
