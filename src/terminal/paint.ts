import { styleText } from 'node:util';
import type { Reply } from '../chat/chat.ts';
import { type TextLine, textLines } from '../chat/plain-text.ts';
import { harmless, wrap } from '../chat/wrap.ts';

/** What a terminal can show. */
export interface Screen {
  readonly columns: number;
  readonly color: boolean;
}

const STYLES: Record<TextLine['part'], Parameters<typeof styleText>[0] | undefined> = {
  title: 'bold',
  heading: 'underline',
  body: undefined,
  caution: 'yellow',
  next: 'cyan',
};

/** The screen behind a stream: 80 columns and no color when it is not a terminal, or when NO_COLOR is set. */
export function screenOf(
  stream: { readonly isTTY?: boolean; readonly columns?: number },
  environment: Readonly<Record<string, string | undefined>>,
): Screen {
  const plain = Boolean(environment.NO_COLOR) || environment.TERM === 'dumb';
  return { columns: stream.columns ?? 80, color: stream.isTTY === true && !plain };
}

/** A reply as it goes to a terminal: the answer, or what is wrong and what to write instead. */
export function paint(reply: Reply, screen: Screen): string {
  if (reply.answer)
    return textLines(reply.answer, screen.columns)
      .map((line) => inked(line, screen))
      .join('\n');
  const { message = 'There is no answer.', hint = 'Type "help".' } = reply.error ?? {};
  return [...wrap(harmless(message), screen.columns), ...wrap(harmless(hint), screen.columns)].join('\n');
}

function inked(line: TextLine, screen: Screen): string {
  const style = STYLES[line.part];
  if (!screen.color || !style || line.text === '') return line.text;
  // The screen has been looked at already; this call must not judge the stream a second time.
  return styleText(style, line.text, { validateStream: false });
}
