import type { Writable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { Answer } from '../chat/answer.ts';
import type { Reply } from '../chat/chat.ts';
import { plainText } from '../chat/plain-text.ts';
import { linesOf } from './lines.ts';
import { paint, type Screen } from './paint.ts';
import { isSaved, saveAttachments } from './save-attachments.ts';
import type { Session } from './session.ts';

/** How a reply is written on one line, or as a paragraph. */
export type Draw = (reply: Reply) => string | Promise<string>;

/** One reply as the JSON object of the `--json` contract. `answer` is null when there is an `error`. */
export function jsonOf(reply: Reply): string {
  const { request, intent, slots, answer, error } = reply;
  const told = answer && {
    title: answer.title,
    text: [plainText(answer), ...unsaved(answer)].join('\n\n'),
    data: answer.data,
    cautions: answer.cautions,
  };
  return JSON.stringify({ request, intent, slots, answer: told ?? null, ...(error ? { error } : {}) });
}

/** A program that reads answers expects no files where it runs; the person behind it is told how to get one. */
const unsaved = ({ attachments = [] }: Answer): string[] =>
  attachments
    .filter(isSaved)
    .map(({ fileName }) => `${fileName} is not saved by --json: ask without it to have the file.`);

/** A reply as a paragraph followed by an empty line; its calendars and tables are saved in this folder. */
export const paragraphOf =
  (screen: Screen): Draw =>
  async (reply) =>
    [paint(reply, screen), ...(await saveAttachments(reply.answer)), ''].join('\n');

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
  for await (const line of linesOf(input)) yield `${await draw(await session.ask(line))}\n`;
}
