import { once } from 'node:events';
import type { Writable } from 'node:stream';
import type { Reply } from '../chat/chat.ts';
import { plainText } from '../chat/plain-text.ts';
import { linesOf } from './lines.ts';
import { paint, type Screen } from './paint.ts';
import type { Session } from './session.ts';

/** How a reply is written on one line, or as a paragraph. */
export type Draw = (reply: Reply) => string;

/** One reply as the JSON object of the `--json` contract. `answer` is null when there is an `error`. */
export function jsonOf(reply: Reply): string {
  const { request, intent, slots, answer, error } = reply;
  const told = answer && {
    title: answer.title,
    text: plainText(answer),
    data: answer.data,
    cautions: answer.cautions,
  };
  return JSON.stringify({ request, intent, slots, answer: told ?? null, ...(error ? { error } : {}) });
}

/** A reply as a paragraph followed by an empty line. */
export const paragraphOf =
  (screen: Screen): Draw =>
  (reply) =>
    `${paint(reply, screen)}\n`;

/** Answers every line of `input` in order on `output`; waits when the reader is slow, stops when it has gone. */
export async function answerLines(
  session: Session,
  input: AsyncIterable<Uint8Array>,
  output: Writable,
  draw: Draw,
): Promise<void> {
  for await (const line of linesOf(input)) {
    const text = `${draw(await session.ask(line))}\n`;
    if (!output.write(text) && !output.destroyed)
      await Promise.race([once(output, 'drain'), once(output, 'close')]);
    if (output.destroyed) return;
  }
}
