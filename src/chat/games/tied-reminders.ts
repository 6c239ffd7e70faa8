import { type PlanningBooks, replanReminders } from '../../kitchen/reminders/planner.ts';
import type { Reminder } from '../../kitchen/reminders/reminder.ts';
import { sayInstant } from '../../kitchen/time/zone.ts';
import type { Asked } from '../command.ts';

/** After a change of games: plans every reminder anew at once, and says how people's own before a game followed. */
export async function remindersFollow(asked: Asked): Promise<readonly string[]> {
  const { kitchen, request } = asked;
  const { workspace } = request.asker;
  const books: PlanningBooks = {
    ledger: kitchen.ledgers(workspace),
    games: kitchen.games(workspace),
    reminders: kitchen.reminders(workspace),
  };
  const before = new Map((await books.reminders.tied(request.nowMs)).map((each) => [each.id, each]));
  await replanReminders(books, kitchen.book, request.nowMs);
  const now = await books.reminders.tied(request.nowMs);
  const say = (ms: number): string => sayInstant(ms, kitchen.book.settings.timeZone);
  return now.flatMap((each) => becameOf(before.get(each.id), each, say));
}

function becameOf(was: Reminder | undefined, now: Reminder, say: (ms: number) => string): string[] {
  const name = `Reminder ${now.code}, ${now.about.task},`;
  if (!was) return [`${name} comes again ${say(now.dueMs)}, since it was told for the earlier time`];
  if (was.state === 'pending' && now.state === 'cancelled') return [`${name} ${say(was.dueMs)}, falls away`];
  if (was.state === 'cancelled' && now.state === 'pending') return [`${name} is on again: ${say(now.dueMs)}`];
  if (now.state !== 'pending' || was.dueMs === now.dueMs) return [];
  return [`${name} moves from ${say(was.dueMs)} to ${say(now.dueMs)}`];
}
