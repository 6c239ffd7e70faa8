import type { Writable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
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

/** Answers every line of `input` in order on `output`, no faster than it is read; `output` stays open. */
export async function answerLines(
  session: Session,
  input: AsyncIterable<Uint8Array>,
  output: Writable,
  draw: Draw,
): Promise<void> {
  await pipeline(answers(session, input, draw), output, { end: false });
}

async function* answers(
  session: Session,
  input: AsyncIterable<Uint8Array>,
  draw: Draw,
): AsyncGenerator<string> {
  for await (const line of linesOf(input)) yield `${draw(await session.ask(line))}\n`;
}
