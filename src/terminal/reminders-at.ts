import { plainText } from '../chat/plain-text.ts';
import { answerIn, reminderComposer } from '../chat/reminders/compose.ts';
import { reminderName } from '../chat/reminders/words.ts';
import type { Kitchen } from '../kitchen/kitchen.ts';
import { previewReminders } from '../kitchen/reminders/preview.ts';
import { sayInstant } from '../kitchen/time/zone.ts';

/** What would be told at the instant of `--now`, and in the day after it; nothing is sent or written down. */
export async function remindersAt(kitchen: Kitchen, workspace: string, columns: number): Promise<string> {
  const nowMs = kitchen.clock.nowMs();
  const { timeZone } = kitchen.book.settings;
  const books = {
    ledger: kitchen.ledgers(workspace),
    games: kitchen.games(workspace),
    reminders: kitchen.reminders(workspace),
  };
  const { state, due, later } = await previewReminders(books, kitchen.book, nowMs);
  const told: string[] = [];
  for (const reminder of due) {
    const body = await reminderComposer.compose(reminder, { state, ledger: books.ledger, late: false });
    if (body === undefined) continue;
    const answer = answerIn(body);
    const title = `* ${sayInstant(reminder.dueMs, timeZone)}: ${answer.title}`;
    told.push(`${plainText({ ...answer, title, next: [] }, columns)}\n`);
  }
  const coming = later.map(
    (reminder) => `  ${sayInstant(reminder.dueMs, timeZone)}: ${reminderName(reminder, state)}`,
  );
  return [
    `Reminders at ${sayInstant(nowMs, timeZone)} (shown only; nothing is sent):`,
    ...(told.length > 0 ? told : ['  nothing is due']),
    ...(coming.length > 0 ? ['Then:', ...coming] : []),
  ].join('\n');
}
