import type { KitchenState } from '../../kitchen/reminders/planner.ts';
import type { Reminder } from '../../kitchen/reminders/reminder.ts';
import { sayInstant } from '../../kitchen/time/zone.ts';
import type { Answer } from '../answer.ts';
import { list } from './frame.ts';
import { reminderName } from './words.ts';

/** One list of what could not be told in time; the same thing at several times is one line. */
export function missedAnswer(missed: readonly Reminder[], state: KitchenState): Answer {
  const zone = state.book.settings.timeZone;
  const times = new Map<string, string[]>();
  for (const reminder of missed) {
    const name = reminderName(reminder, state);
    times.set(name, [...(times.get(name) ?? []), sayInstant(reminder.dueMs, zone)]);
  }
  const count = missed.length === 1 ? '1 reminder' : `${missed.length} reminders`;
  return {
    title: `Missed: ${count} could not be sent in time.`,
    sections: list([...times].map(([name, due]) => `${name}: ${due.join('; ')}`)),
    cautions: [],
    next: ['stock', 'reminders'].map((says) => ({ label: says, says })),
    audience: 'channel',
    data: {
      kind: 'missed',
      missed: missed.map(({ code, kind, dueMs }) => ({ reminder: code, kind, dueMs })),
    },
  };
}
