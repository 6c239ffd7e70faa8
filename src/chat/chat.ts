import type { Kitchen } from '../kitchen/kitchen.ts';
import { lazyPort } from '../kitchen/lazy-port.ts';
import { kitchensHere } from '../kitchen/settings/kitchens-here.ts';
import { Problem } from '../nutrition/problem.ts';
import type { Answer } from './answer.ts';
import type { Command } from './command.ts';
import { COMMANDS } from './commands/index.ts';
import { type ConversationMemory, createConversationMemory } from './conversation.ts';
import type { Forms } from './forms/desk.ts';
import type { Homes } from './home/home.ts';
import { refuseImpossibleMoment } from './impossible-moment.ts';
import { notAllowed } from './not-allowed.ts';
import { refuseUnhappened } from './only-what-happened.ts';
import { read } from './reading/read.ts';
import type { Attached, Request } from './request.ts';
import type { Intent, Reading, Slots } from './slots.ts';
import { kitchenAsTold } from './told-book.ts';

/** What comes back for one request, whatever happened. A surface draws it; nothing is thrown. */
export interface Reply {
  readonly request: string;
  readonly intent: Intent;
  readonly slots: Slots;
  readonly answer?: Answer;
  readonly error?: { readonly code: string; readonly message: string; readonly hint: string };
}

/** Why a request was not answered, in words for the person. */
export type Refusal = NonNullable<Reply['error']>;

export interface Chat {
  ask(request: Request): Promise<Reply>;
  /** The same for what was chosen instead of written: `reading` stands for the text, which is kept for the record. */
  act(request: Request, reading: Reading): Promise<Reply>;
  readonly forms: Forms;
  /** What somebody sees before asking. Throws when it cannot be looked up. */
  readonly home: Homes;
}

/** How an unexpected failure is recorded; returns the id the person can quote. */
export type ReportUnexpected = (error: unknown) => string;

/** Longer than any request or pasted recipe; a bound on what the grammar ever sees. */
const MOST_CHARACTERS = 4_000;

/** Answered even at the head of a text that is too long. */
const URGENT: ReadonlySet<Intent> = new Set(['emergency', 'medical']);

const byIntent = new Map<Intent, Command>(COMMANDS.map((command) => [command.intent, command]));

/** The one way from text to answer, the same for every surface. */
export function createChat(
  kitchen: Kitchen,
  reportUnexpected: ReportUnexpected,
  memory: ConversationMemory = createConversationMemory(),
): Chat {
  const here = kitchensHere(kitchen, reportUnexpected);

  async function answered(request: Request, reading: Reading, isReadable: () => void): Promise<Reply> {
    const said = { request: request.text, intent: reading.intent, slots: reading.slots };
    const conversation = memory.get(request.conversation);
    try {
      const isUrgent = URGENT.has(reading.intent);
      if (!isUrgent) isReadable();
      const command = byIntent.get(reading.intent);
      if (!command) throw new Problem('not_understood', 'I did not understand that.', 'Type "help".');
      if (!command.roles.includes(request.asker.role)) {
        throw notAllowed(request.asker.role);
      }
      const { workspace } = request.asker;
      // In an emergency nothing is looked up first.
      const told = isUrgent
        ? { kitchen }
        : await kitchenAsTold(await here(workspace), workspace, reading.intent);
      const { answer, conversation: next } = await command.answers({
        slots: reading.slots,
        request,
        kitchen: told.kitchen,
        conversation,
      });
      if (next) memory.set(request.conversation, next);
      return { ...said, answer: withCaution(answer, told.caution) };
    } catch (error) {
      return { ...said, error: asError(error, reportUnexpected) };
    }
  }

  const act: Chat['act'] = (request, reading) => answered(request, reading, () => {});
  return {
    async ask(request) {
      const conversation = memory.get(request.conversation);
      const head = request.text.slice(0, MOST_CHARACTERS);
      const reading = read(head, { book: kitchen.book, conversation, nowMs: request.nowMs });
      const { attached } = request;
      if (attached && !URGENT.has(reading.intent) && (attached.kind !== 'other' || request.text === '')) {
        return answered(request, importing(attached), () => {});
      }
      return answered(request, reading, () => {
        refuseUnreadable(request.text);
        refuseUnhappened(request.text, reading);
        refuseImpossibleMoment(head, reading.intent);
      });
    },
    act,
    home: async (...given) => (await import('./home/home.ts')).createHomes(here)(...given),
    forms: lazyPort(async () => (await import('./forms/desk.ts')).createForms(act, here)),
  };
}

/** What is sent with a message is to be imported: a table is a roster, anything else a calendar, or is told that it is none. */
function importing({ kind, fileName }: Attached): Reading {
  const slots = { action: 'import', file: fileName };
  return kind === 'table'
    ? { intent: 'allergens', slots: { scope: 'roster', ...slots } }
    : { intent: 'game', slots };
}

const withCaution = (answer: Answer, caution: string | undefined): Answer =>
  caution === undefined ? answer : { ...answer, cautions: [caution, ...answer.cautions] };

function refuseUnreadable(text: string): void {
  // The second pattern knows every script; nearly all requests are done with the first.
  if (!/[a-z\d]/i.test(text) && !/[\p{L}\p{N}\p{S}\p{P}]/u.test(text)) {
    throw new Problem(
      'empty_request',
      'There is nothing to read.',
      'Write a request, such as "40 oat bars" or "help".',
    );
  }
  if (text.length > MOST_CHARACTERS) {
    throw new Problem(
      'too_long',
      `That is ${text.length} characters; I read at most ${MOST_CHARACTERS}.`,
      'Ask one thing at a time, such as "40 oat bars".',
    );
  }
}

function asError(error: unknown, reportUnexpected: ReportUnexpected): Refusal {
  if (error instanceof Problem) return { code: error.code, message: error.message, hint: error.hint };
  const id = reportUnexpected(error);
  return {
    code: 'internal',
    message: `Something went wrong on our side (${id}). Nothing was changed.`,
    hint: 'Try again; if it stays, tell the kitchen staff this id.',
  };
}
