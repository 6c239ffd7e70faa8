import type { ComposingDesk } from '../../kitchen/reminders/composer.ts';
import type { Reminder } from '../../kitchen/reminders/reminder.ts';
import { sayInstant } from '../../kitchen/time/zone.ts';
import type { Answer, NextStep, Section } from '../answer.ts';

/** What a kind of reminder says; the frame adds its code, whether it is late, and what can be said back. */
export interface Told {
  readonly title: string;
  readonly sections?: readonly Section[];
  readonly cautions?: readonly string[];
  /** Requests that do what it asks for, before "got it" and "done". */
  readonly says?: readonly string[];
  /** Forms that do it, before those. */
  readonly opens?: readonly NextStep[];
  readonly data?: Readonly<Record<string, unknown>>;
}

export const text = (words: string): Section => ({ kind: 'text', text: words });
export const list = (items: readonly string[], heading?: string): Section[] =>
  items.length === 0 ? [] : [{ kind: 'list', ...(heading === undefined ? {} : { heading }), items }];

/** The buttons whose outcome the reminder itself shows. */
export const takeStep = (code: string): NextStep => ({
  label: "I've got it",
  says: `got it ${code}`,
  marks: true,
});
export const doneStep = (code: string): NextStep => ({ label: 'Done', says: `done ${code}`, marks: true });
export const snoozeStep = (code: string): NextStep => ({
  label: 'Snooze 30 min',
  says: `snooze ${code} 30 min`,
  marks: true,
});

const step = (says: string, label = says): NextStep => ({ label, says });

/** The whole message: late ones say when they were due. */
export function framed(told: Told, reminder: Reminder, { state, late }: ComposingDesk): Answer {
  const zone = state.book.settings.timeZone;
  const due = sayInstant(reminder.dueMs, zone);
  const { code } = reminder;
  return {
    title: late ? `Late: ${told.title}` : told.title,
    sections: [...(late ? [text(`It was due ${due}.`)] : []), ...(told.sections ?? [])],
    cautions: told.cautions ?? [],
    next: [
      ...(told.opens ?? []),
      ...(told.says ?? []).map((says) => step(says)),
      takeStep(code),
      doneStep(code),
      snoozeStep(code),
    ],
    audience: 'channel',
    data: {
      reminder: code,
      kind: reminder.kind,
      dueMs: reminder.dueMs,
      due,
      late,
      ...told.data,
    },
  };
}
