import type { Book } from '../../nutrition/book.ts';
import { type ClockTime, dateOf, instantOf } from '../time/zone.ts';
import { type KitchenState, kitchenState, type PlanningBooks, plannedReminders } from './planner.ts';
import type { Reminder } from './reminder.ts';
import type { NewReminder } from './reminder-book.ts';

/** More than fall due in a day. */
const MOST = 500;
const DAY_MS = 24 * 3_600_000;

export interface Preview {
  readonly state: KitchenState;
  /** Due since midnight, not told, and still of help: what a look at this instant would send. */
  readonly due: readonly Reminder[];
  /** In the 24 hours after it. */
  readonly later: readonly Reminder[];
}

/** What would be told at an instant, without telling it or writing anything down. */
export async function previewReminders(books: PlanningBooks, book: Book, nowMs: number): Promise<Preview> {
  const midnight = instantOf(
    { date: dateOf(nowMs, book.settings.timeZone), time: '00:00' as ClockTime },
    book.settings.timeZone,
  );
  const state = await kitchenState(books, book, nowMs);
  const written = await books.reminders.upcoming(MOST);
  const planned: Reminder[] = [];
  for (const wanted of plannedReminders({ ...state, nowMs: midnight })) {
    if (!(await books.reminders.byKey(wanted.key))) planned.push(asReminder(wanted));
  }
  const all = [...written, ...planned].sort((a, b) => a.dueMs - b.dueMs);
  return {
    state,
    due: all.filter(({ dueMs, helpsUntilMs }) => dueMs <= nowMs && helpsUntilMs >= nowMs),
    later: all.filter(({ dueMs }) => dueMs > nowMs && dueMs <= nowMs + DAY_MS),
  };
}

/** Not written down yet, so it has no code. */
const asReminder = (wanted: NewReminder): Reminder => ({
  ...wanted,
  id: wanted.key,
  workspace: '',
  code: '',
  state: 'pending',
});
