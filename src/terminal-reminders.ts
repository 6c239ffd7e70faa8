import { Problem } from './nutrition/problem.ts';
import { type RemindParts, startReminders } from './remind.ts';
import { screenOf } from './terminal/paint.ts';
import { remindersAt } from './terminal/reminders-at.ts';
import { type Interject, terminalMessenger } from './terminal/terminal-messenger.ts';

interface SpeakParts extends Omit<RemindParts, 'messenger'> {
  /** The clock stands still (`--now`): what would be told is shown, and nothing is sent. */
  readonly isPreview: boolean;
}

/** Lets reminders speak between the lines of the conversation; gives back how to stop them. */
export async function speakReminders(parts: SpeakParts, interject: Interject): Promise<() => Promise<void>> {
  const columns = () => screenOf(process.stdout, process.env).columns;
  const report = tellOnce(interject, parts.report);
  if (parts.isPreview) {
    await remindersAt(parts.kitchen, parts.workspace, columns()).then(interject, report);
    return async () => {};
  }
  const messenger = terminalMessenger(interject, columns);
  const scheduler = await startReminders({ ...parts, report, messenger });
  return scheduler.stop;
}

/** A problem that stays is told once, not every minute; whoever talks goes on talking. */
function tellOnce(interject: Interject, report: RemindParts['report']): RemindParts['report'] {
  const told = new Set<string>();
  return (error) => {
    if (!(error instanceof Problem)) return report(error);
    if (told.has(error.message)) return undefined;
    told.add(error.message);
    return interject(`Reminders wait: ${error.message} ${error.hint}`);
  };
}
