import { WebClient } from '@slack/web-api';
import { answerIn } from '../chat/reminders/compose.ts';
import type { Messenger } from '../kitchen/reminders/messenger.ts';
import type { OutboxMessage, ReminderAudience } from '../kitchen/reminders/reminder.ts';
import { answerMessage } from './blocks/message.ts';
import { clientOptions } from './client.ts';
import { deliveryFailure } from './delivery-failure.ts';
import { boltLogger, createLog } from './log.ts';
import { blockIdOf } from './place.ts';

/** The channel of each role. */
export type ReminderChannels = Readonly<Record<ReminderAudience, string>>;

export interface MessengerSettings {
  readonly botToken: string;
  readonly apiUrl?: string;
  readonly channels: ReminderChannels;
}

/** Marks our reminders in a channel's history; the payload's `id` is the message's own. */
const EVENT_TYPE = 'batchbell_reminder';
/** Buttons under a reminder answer whoever presses them, in the channel. */
const CHANNEL_BLOCK = blockIdOf({ workspace: '', channel: '', user: '', isOwnDirectMessage: false });
const PAGE = 200;
/** Two thousand messages back; what is farther is sent again rather than lost. */
const MOST_PAGES = 10;
/** Slack's clock and ours may differ, and a reminder may be written down early. */
const LOOK_BACK_S = 24 * 3600;

/** Sends to a role's channel, once, with the message's id in its metadata, so that it can be found again. */
export function slackMessenger({ botToken, apiUrl, channels }: MessengerSettings): Messenger {
  const client = new WebClient(botToken, {
    ...clientOptions(apiUrl),
    logger: boltLogger(createLog('silent')),
  });
  return {
    async send(message) {
      const channel = channels[message.audience];
      const sent = await client.chat
        .postMessage({
          channel,
          ...answerMessage(answerIn(message.body), CHANNEL_BLOCK),
          unfurl_links: false,
          unfurl_media: false,
          parse: 'none',
          metadata: { event_type: EVENT_TYPE, event_payload: { id: message.id } },
        })
        .catch(failed);
      return `${channel} ${sent.ts ?? ''}`.trim();
    },
    find: (message) => findIn(client, channels[message.audience], message),
  };
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
        metadata?.event_type === EVENT_TYPE &&
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
