import { randomUUID } from 'node:crypto';
import type { Answer, Mark } from '../chat/answer.ts';
import type { Chat, Reply } from '../chat/chat.ts';
import type { Attached, PersonRole } from '../chat/request.ts';
import type { Intent } from '../chat/slots.ts';
import type { Clock } from '../kitchen/kitchen.ts';
import { createAttaching } from './attach.ts';
import { answerMessage, errorMessage } from './blocks/message.ts';
import { type Delivery, deliver, type Reach } from './deliver.ts';
import { errorCode, placeInCode } from './errors.ts';
import type { Log } from './log.ts';
import { createMarking } from './marking.ts';
import type { Metrics } from './metrics.ts';
import { createPeople } from './people.ts';
import { blockIdOf, conversationKey } from './place.ts';
import { withinAllowance } from './response-url.ts';
import type { Person, Roles } from './roles.ts';
import type { ToldMessage } from './told.ts';

/** One thing said to the bot, however it was said. */
export interface Said extends Reach {
  readonly text: string;
  /** Slack's own name for this delivery: what is delivered again is logged once. */
  readonly requestKey?: string;
  readonly homeWorkspace?: string;
  /** `aside` (a command, a press) is answered to the asker alone unless the kitchen works by it; `aloud` where all read. */
  readonly manner: 'aside' | 'aloud';
  /** The message whose button was pressed, when its outcome belongs into it. */
  readonly told?: ToldMessage;
  readonly attached?: Attached;
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
  readonly metrics: Metrics;
  readonly wait: (ms: number) => Promise<void>;
  /** Something was written down in this workspace. */
  readonly changed: (workspace: string) => void;
}

/** What the kitchen works by together: a command of staff or an intern about these is shown to the channel. */
const SHARED_INTENTS: ReadonlySet<Intent> = new Set(['scale']);
/** Requests that write something down which homes show. */
const WRITING: ReadonlySet<Intent> = new Set([
  'made',
  'served',
  'tossed',
  'counted',
  'temperature',
  'game',
  'remind',
  'settings',
]);
const KITCHEN: ReadonlySet<PersonRole> = new Set(['staff', 'intern']);

/** From a message in Slack to an answer in Slack, the same for every way of asking. */
export function createAnswering({
  chat,
  clock,
  roles,
  log,
  metrics,
  wait,
  changed,
}: AnsweringParts): Answering {
  const people = createPeople(clock);
  const marking = createMarking(log, wait);
  const attaching = createAttaching(log, wait);

  async function reply(said: Said): Promise<{ delivery: Delivery; intent: Intent; mark?: Mark }> {
    const role = await roles.roleOf(personOf(said), said.client);
    const { place } = said;
    const reply = await chat.ask({
      text: said.text === '' && !said.attached ? 'help' : said.text,
      ...(said.attached ? { attached: said.attached } : {}),
      asker: { role, who: place.user, workspace: place.workspace },
      conversation: conversationKey(place),
      isPrivate: said.manner === 'aside' || place.isOwnDirectMessage,
      ...(said.requestKey === undefined ? {} : { requestKey: said.requestKey }),
      nowMs: clock.nowMs(),
    });
    const { intent, answer } = reply;
    if (answer && (WRITING.has(intent) || reply.slots.scope === 'roster')) changed(place.workspace);
    const delivery = await named(await drawn(reply, said, role), said);
    return { delivery, intent, ...(answer?.mark ? { mark: answer.mark } : {}) };
  }

  async function drawn(reply: Reply, said: Said, role: PersonRole): Promise<Delivery> {
    const { answer, intent } = reply;
    const isPublic = isForAll(reply, said, role);
    // A label logged with its batch is in the answer, to be copied.
    const files = intent === 'made' ? [] : (answer?.attachments ?? []);
    if (!answer || files.length === 0) return draw(reply, said, isPublic);
    const where = await attaching.attach(files, { place: said.place, client: said.client, isPublic });
    return draw(where ? { ...reply, answer: saysWhere(answer, where) } : reply, said, isPublic);
  }

  async function named(delivery: Delivery, { place, client }: Said): Promise<Delivery> {
    if (delivery.isPublic && !place.isOwnDirectMessage) return delivery;
    const { message } = delivery;
    const blocks = await people.named(message.blocks, place.workspace, client);
    return { ...delivery, message: { ...message, blocks } };
  }

  return {
    async answer(given) {
      const { respond, client, told } = given;
      const said = respond ? { ...given, respond: withinAllowance(respond, clock) } : given;
      const startedMs = clock.nowMs();
      try {
        const { delivery, intent, mark } = await reply(said);
        const isMarked = mark !== undefined && (await marking.mark(mark, client, told));
        const route = isMarked ? 'update' : await deliver(delivery, said, log, wait);
        const ms = clock.nowMs() - startedMs;
        metrics.answered(intent, route ?? 'none', ms);
        log.info({ intent, route, ms }, 'answered');
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

/** Whether everyone in the channel may read it. */
function isForAll({ answer, intent }: Reply, { manner }: Said, role: PersonRole): boolean {
  const isShared = manner === 'aloud' || (KITCHEN.has(role) && SHARED_INTENTS.has(intent));
  return answer?.audience === 'channel' && isShared;
}

function draw({ answer, error }: Reply, { place }: Said, isPublic: boolean): Delivery {
  if (!answer) return { message: error ? errorMessage(error) : apology('empty'), isPublic: false };
  return { message: answerMessage(answer, blockIdOf(place)), isPublic };
}

/** What is attached is not said again. */
function saysWhere({ attachments = [], ...answer }: Answer, where: 'here' | 'directly'): Answer {
  const names = attachments.map(({ fileName }) => fileName).join(', ');
  const text = where === 'here' ? `Attached: ${names}` : `Sent to you in a direct message: ${names}`;
  return { ...answer, sections: [...answer.sections, { kind: 'text', text }] };
}

const apology = (id: string) =>
  errorMessage({
    code: 'internal',
    message: `Something went wrong on our side (${id}).`,
    hint: 'Try again; if it stays, tell the kitchen staff this id.',
  });
