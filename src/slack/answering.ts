import { randomUUID } from 'node:crypto';
import type { Chat, Reply } from '../chat/chat.ts';
import type { PersonRole } from '../chat/request.ts';
import type { Intent } from '../chat/slots.ts';
import type { Clock } from '../kitchen/kitchen.ts';
import { answerMessage, errorMessage } from './blocks/message.ts';
import { type Delivery, deliver, type Reach } from './deliver.ts';
import { errorCode } from './errors.ts';
import type { Log } from './log.ts';
import { blockIdOf, conversationKey } from './place.ts';
import type { Person, Roles } from './roles.ts';

/** One thing said to the bot, however it was said. */
export interface Said extends Reach {
  readonly text: string;
  /** Slack's own name for this delivery: what is delivered again is logged once. */
  readonly requestKey?: string;
  readonly homeWorkspace?: string;
  /** `aside` (a command, a press) is answered to the asker alone unless the kitchen works by it; `aloud` where all read. */
  readonly manner: 'aside' | 'aloud';
}

export interface Answering {
  /** Answers and delivers; never throws. */
  answer(said: Said): Promise<void>;
}

export interface AnsweringParts {
  readonly chat: Chat;
  readonly clock: Clock;
  readonly roles: Roles;
  readonly log: Log;
  readonly wait: (ms: number) => Promise<void>;
}

/** What the kitchen works by together: a command of staff or an intern about these is shown to the channel. */
const SHARED_INTENTS: ReadonlySet<Intent> = new Set(['scale']);
const KITCHEN: ReadonlySet<PersonRole> = new Set(['staff', 'intern']);

/** From a message in Slack to an answer in Slack, the same for every way of asking. */
export function createAnswering({ chat, clock, roles, log, wait }: AnsweringParts): Answering {
  async function reply(said: Said): Promise<{ delivery: Delivery; intent: Intent }> {
    const role = await roles.roleOf(personOf(said), said.client);
    const { place } = said;
    const reply = await chat.ask({
      text: said.text === '' ? 'help' : said.text,
      asker: { role, who: place.user, workspace: place.workspace },
      conversation: conversationKey(place),
      isPrivate: said.manner === 'aside' || place.isOwnDirectMessage,
      ...(said.requestKey === undefined ? {} : { requestKey: said.requestKey }),
      nowMs: clock.nowMs(),
    });
    return { delivery: draw(reply, said, role), intent: reply.intent };
  }

  return {
    async answer(said) {
      const startedMs = clock.nowMs();
      try {
        const { delivery, intent } = await reply(said);
        const route = await deliver(delivery, said, log, wait);
        log.info({ intent, route, ms: clock.nowMs() - startedMs }, 'answered');
      } catch (error) {
        const id = randomUUID().slice(0, 8);
        log.error({ id, code: errorCode(error), at: placeInCode(error) }, 'an answer failed');
        await deliver({ message: apology(id), isPublic: false }, said, log, wait);
      }
    },
  };
}

const personOf = ({ place, homeWorkspace }: Said): Person => ({
  workspace: place.workspace,
  user: place.user,
  ...(homeWorkspace ? { homeWorkspace } : {}),
});

function draw(reply: Reply, said: Said, role: PersonRole): Delivery {
  const { answer, error } = reply;
  if (!answer) return { message: error ? errorMessage(error) : apology('empty'), isPublic: false };
  const isKitchen = KITCHEN.has(role);
  const isShared = said.manner === 'aloud' || (isKitchen && SHARED_INTENTS.has(reply.intent));
  return {
    message: answerMessage(answer, blockIdOf(said.place)),
    isPublic: answer.audience === 'channel' && isShared,
  };
}

const apology = (id: string) =>
  errorMessage({
    code: 'internal',
    message: `Something went wrong on our side (${id}).`,
    hint: 'Try again; if it stays, tell the kitchen staff this id.',
  });

/** Where in our code it broke; the first line of a stack quotes the message, which may hold a person's words. */
const placeInCode = (error: unknown): string =>
  error instanceof Error ? (error.stack?.split('\n').slice(1, 4).join(' ').trim() ?? '') : '';
