import { createInterface } from 'node:readline';
import type { ReadStream, WriteStream } from 'node:tty';
import { wrap } from '../chat/wrap.ts';
import { paint, type Screen } from './paint.ts';
import type { Session } from './session.ts';

const LEAVE = /^\s*(quit|exit|bye|:q)\s*$/i;

/** The three lines a newcomer needs. */
export const greeting = (kitchenName: string): readonly string[] => [
  `This is the ${kitchenName} kitchen. Ask as you would text a colleague.`,
  'Try: "40 oat bars", "nut free?", "macros oat bar cut into 8", "out of milk".',
  '"help" shows more. "quit" or Ctrl-D leaves.',
];

/**
 * Talks until the person leaves. What was typed can be called back with the arrow keys; it is kept in memory only,
 * because people type allergies and weights.
 */
export async function converse(
  session: Session,
  kitchenName: string,
  streams: { readonly input: ReadStream | NodeJS.ReadableStream; readonly output: WriteStream },
  screen: () => Screen,
): Promise<void> {
  const say = (text: string): void => void streams.output.write(`${text}\n`);
  for (const line of greeting(kitchenName)) say(wrap(line, screen().columns).join('\n'));
  const prompt = createInterface({
    ...streams,
    prompt: '> ',
    historySize: 200,
    removeHistoryDuplicates: true,
  });
  prompt.on('SIGINT', () => prompt.close());
  prompt.prompt();
  for await (const line of prompt) {
    if (LEAVE.test(line)) return prompt.close();
    if (line.trim() !== '') say(`${paint(await session.ask(line), screen())}\n`);
    prompt.prompt();
  }
  // Ctrl-D leaves the cursor behind the prompt; what the shell writes next starts on its own line.
  if (streams.output.isTTY) say('');
}
