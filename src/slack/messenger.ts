import { WebClient } from '@slack/web-api';
import type { Answer } from '../chat/answer.ts';
import { answerIn } from '../chat/reminders/compose.ts';
import { DeliveryFailure, type Messenger } from '../kitchen/reminders/messenger.ts';
import type { OutboxMessage, ReminderAudience } from '../kitchen/reminders/reminder.ts';
import { answerMessage } from './blocks/message.ts';
import { channelTrouble, NO_CHANNEL } from './channel-trouble.ts';
import { clientOptions } from './client.ts';
import { deliveryFailure } from './delivery-failure.ts';
import { boltLogger, createLog } from './log.ts';
import { REMINDER_EVENT, reminderMetadata, toldBlockId } from './told.ts';

/** The channel of each role. */
export type ReminderChannels = Readonly<Record<ReminderAudience, string>>;

export interface MessengerSettings {
  readonly botToken: string;
  readonly apiUrl?: string;
  /** A role without a channel is told through staff directly. */
  readonly channels: Partial<ReminderChannels>;
  /** Member ids of staff, who are told directly when a channel takes nothing any more. */
  readonly staff: () => Promise<readonly string[]>;
}

const PAGE = 200;
/** Two thousand messages back; what is farther is sent again rather than lost. */
const MOST_PAGES = 10;
/** Slack's clock and ours may differ, and a reminder may be written down early. */
const LOOK_BACK_S = 24 * 3600;

/**
 * Sends to a role's channel, once, with the message's id in its metadata, so that it can be found again. Where the channel
 * is gone or shut, to staff directly, with the reason.
 */
export function slackMessenger({ botToken, apiUrl, channels, staff }: MessengerSettings): Messenger {
  const client = new WebClient(botToken, {
    ...clientOptions(apiUrl),
    logger: boltLogger(createLog('silent')),
  });
  return {
    async send(message) {
      const channel = message.place ?? channels[message.audience];
      try {
        if (channel === undefined) throw new DeliveryFailure({ reason: NO_CHANNEL, outcome: 'refused' });
        return await post(client, channel, answerIn(message.body), message.id);
      } catch (error) {
        const trouble = troubleOf(error);
        if (trouble === undefined) throw error;
        return toStaff(client, await staff(), withReason(answerIn(message.body), trouble), message, error);
      }
    },
    async find(message) {
      try {
        const channel = message.place ?? channels[message.audience];
        if (channel === undefined) return await findWithStaff(client, await staff(), message);
        return await findIn(client, channel, message);
      } catch (error) {
        if (troubleOf(error) === undefined) throw error;
        return findWithStaff(client, await staff(), message);
      }
    },
  };
}

const troubleOf = (error: unknown): string | undefined =>
  error instanceof DeliveryFailure ? channelTrouble(error.details.reason) : undefined;

const withReason = (answer: Answer, trouble: string): Answer => ({
  ...answer,
  sections: [{ kind: 'text', text: trouble }, ...answer.sections],
});

async function post(client: WebClient, channel: string, answer: Answer, id: string): Promise<string> {
  const sent = await client.chat
    .postMessage({
      channel,
      ...answerMessage(answer, toldBlockId(id)),
      unfurl_links: false,
      unfurl_media: false,
      parse: 'none',
      metadata: reminderMetadata(id),
    })
    .catch(failed);
  return `${sent.channel ?? channel} ${sent.ts ?? ''}`.trim();
}

/**
 * To each of staff. Told to one is told: trying the others again would tell the first twice.
 * @throws DeliveryFailure of the channel when nobody can be told; an open outcome when one may have been.
 */
async function toStaff(
  client: WebClient,
  staff: readonly string[],
  answer: Answer,
  { id }: OutboxMessage,
  refusal: unknown,
): Promise<string> {
  const refs: string[] = [];
  let worst: unknown = refusal;
  for (const member of staff) {
    try {
      refs.push(await post(client, member, answer, id));
    } catch (error) {
      if (error instanceof DeliveryFailure && error.details.outcome !== 'refused') worst = error;
    }
  }
  if (refs.length === 0) throw worst;
  return refs.join(', ');
}

async function findWithStaff(
  client: WebClient,
  staff: readonly string[],
  message: OutboxMessage,
): Promise<string | undefined> {
  for (const member of staff) {
    const found = await findWith(client, member, message);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** Whom Slack lets nobody write to was told nothing. */
async function findWith(client: WebClient, member: string, message: OutboxMessage) {
  try {
    const { channel } = await client.conversations.open({ users: member }).catch(failed);
    return channel?.id ? await findIn(client, channel.id, message) : undefined;
  } catch (error) {
    if (error instanceof DeliveryFailure && error.details.outcome === 'refused') return undefined;
    throw error;
  }
}

/** Reads the channel back from now to before the message can have been sent. */
async function findIn(
  client: WebClient,
  channel: string,
  message: OutboxMessage,
): Promise<string | undefined> {
  const dueS = message.reminder ? message.reminder.dueMs / 1000 : undefined;
  let cursor: string | undefined;
  for (let page = 0; page < MOST_PAGES; page += 1) {
    const read = await client.conversations
      .history({
        channel,
        limit: PAGE,
        include_all_metadata: true,
        ...(dueS === undefined ? {} : { oldest: String(dueS - LOOK_BACK_S) }),
        ...(cursor ? { cursor } : {}),
      })
      .catch(failed);
    const found = read.messages?.find(
      ({ metadata }) =>
        metadata?.event_type === REMINDER_EVENT &&
        (metadata.event_payload as { id?: unknown } | undefined)?.id === message.id,
    );
    if (found) return `${channel} ${found.ts ?? ''}`.trim();
    cursor = read.response_metadata?.next_cursor;
    if (!cursor) return undefined;
  }
  return undefined;
}

function failed(error: unknown): never {
  throw deliveryFailure(error);
}
