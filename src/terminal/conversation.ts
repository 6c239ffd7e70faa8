import { clearScreenDown, createInterface, cursorTo, type Interface, moveCursor } from 'node:readline';
import type { ReadStream, WriteStream } from 'node:tty';
import { wrap } from '../chat/wrap.ts';
import { paint, type Screen } from './paint.ts';
import { saveAttachments } from './save-attachments.ts';
import type { Session } from './session.ts';
import type { Interject } from './terminal-messenger.ts';

const LEAVE = /^\s*(quit|exit|bye|:q)\s*$/i;

/** The three lines a newcomer needs. */
export const greeting = (kitchenName: string): readonly string[] => [
  `This is the ${kitchenName} kitchen. Ask as you would text a colleague.`,
  'Try: "40 oat bars", "nut free?", "macros oat bar cut into 8", "out of milk".',
  '"help" shows more. "quit" or Ctrl-D leaves.',
];

/** Starts what speaks unasked; gives back how to silence it. */
export type SpeakUnasked = (interject: Interject) => Promise<() => Promise<void>>;

/**
 * Talks until the person leaves. What was typed can be called back with the arrow keys; it is kept in memory only,
 * because people type allergies and weights.
 */
export async function converse(
  session: Session,
  kitchenName: string,
  streams: { readonly input: ReadStream | NodeJS.ReadableStream; readonly output: WriteStream },
  screen: () => Screen,
  speakUnasked: SpeakUnasked = async () => async () => {},
): Promise<void> {
  const say = (text: string): void => void streams.output.write(`${text}\n`);
  for (const line of greeting(kitchenName)) say(wrap(line, screen().columns).join('\n'));
  const answer = async (line: string): Promise<void> => {
    const reply = await session.ask(line);
    say([paint(reply, screen()), ...(await saveAttachments(reply.answer)), ''].join('\n'));
  };
  const prompt = createInterface({
    ...streams,
    prompt: '> ',
    historySize: 200,
    removeHistoryDuplicates: true,
  });
  prompt.on('SIGINT', () => prompt.close());
  prompt.prompt();
  // Listens from here on: lines piped in may all be there before what speaks unasked has started.
  const lines = prompt[Symbol.asyncIterator]();
  const silence = await speakUnasked((text) => interjected(prompt, streams.output, text));
  try {
    for await (const line of lines) {
      if (LEAVE.test(line)) return prompt.close();
      if (line.trim() !== '') await answer(line);
      prompt.prompt();
    }
    // Ctrl-D leaves the cursor behind the prompt; what the shell writes next starts on its own line.
    if (streams.output.isTTY) say('');
  } finally {
    await silence();
  }
}

/** The line that is being typed is taken away, the text written, and the line put back with the cursor where it was. */
function interjected(prompt: Interface, output: WriteStream, text: string): void {
  if (output.isTTY) {
    cursorTo(output, 0);
    moveCursor(output, 0, -prompt.getCursorPos().rows);
    clearScreenDown(output);
  }
  output.write(`${text}\n\n`);
  prompt.prompt(true);
}
