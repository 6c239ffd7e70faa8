import type { Answer } from '../chat/answer.ts';
import { plainText } from '../chat/plain-text.ts';
import { answerIn } from '../chat/reminders/compose.ts';
import type { Messenger } from '../kitchen/reminders/messenger.ts';

/** Writes a text between the lines of the conversation. */
export type Interject = (text: string) => void;

/** A terminal: what was printed was read. One that died may have printed; nobody can look, so it is printed again. */
export function terminalMessenger(interject: Interject, columns: () => number): Messenger {
  return {
    async send({ id, body, audience }) {
      interject(reminderText(answerIn(body), audience, columns()));
      return `terminal ${id}`;
    },
    find: async () => undefined,
  };
}

/** A reminder as plain text, with whom it is for. */
export function reminderText(answer: Answer, audience: string, columns: number): string {
  const whom = audience === 'dietitian' ? 'For the dietitian: ' : '';
  return plainText({ ...answer, title: `* ${whom}${answer.title}` }, columns);
}
