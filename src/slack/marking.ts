import type { types } from '@slack/bolt';
import type { WebClient } from '@slack/web-api';
import type { Mark } from '../chat/answer.ts';
import { patiently } from './deliver.ts';
import { errorCode } from './errors.ts';
import type { Log } from './log.ts';
import { marked, reminderMetadata, type ToldMessage } from './told.ts';

/** A place as `slackMessenger` writes it down: the channel and the message's own time. */
const PLACE = /^([CDG][A-Z0-9]+) (\d+\.\d+)$/;

/** Shows in the messages that told of something what became of it. */
export interface Marking {
  /**
   * In the message whose button was pressed, and in every other that tells of it: in words as by a button. True when the
   * pressed one shows it; else the asker is answered as ever.
   */
  mark(mark: Mark, client: WebClient, pressed: ToldMessage | undefined): Promise<boolean>;
}

export function createMarking(log: Log, wait: (ms: number) => Promise<void>): Marking {
  async function show(told: ToldMessage, mark: Mark, client: WebClient): Promise<boolean> {
    const { message, id } = marked(told, mark);
    const { channel, ts } = told;
    const metadata = id ? { metadata: reminderMetadata(id) } : {};
    try {
      await patiently(() => client.chat.update({ channel, ts, ...message, ...metadata }), wait);
      return true;
    } catch (error) {
      log.warn({ route: 'update', code: errorCode(error) }, 'a message was not changed');
      return false;
    }
  }

  /** The message as it stands there now; `undefined` where it is gone or cannot be read. */
  async function standing(channel: string, ts: string, client: WebClient): Promise<ToldMessage | undefined> {
    try {
      const only = { channel, oldest: ts, latest: ts, inclusive: true, limit: 1 };
      const { messages = [] } = await client.conversations.history(only);
      const found = messages.find((message) => message.ts === ts);
      if (!found?.blocks) return undefined;
      return { channel, ts, text: found.text ?? '', blocks: found.blocks as readonly types.KnownBlock[] };
    } catch (error) {
      log.warn({ route: 'history', code: errorCode(error) }, 'a message was not found again');
      return undefined;
    }
  }

  return {
    async mark(mark, client, pressed) {
      const isShown = pressed !== undefined && (await show(pressed, mark, client));
      for (const place of new Set(mark.told)) {
        const [, channel = '', ts = ''] = PLACE.exec(place) ?? [];
        if (channel === '' || (channel === pressed?.channel && ts === pressed.ts)) continue;
        const other = await standing(channel, ts, client);
        if (other) await show(other, mark, client);
      }
      return isShown;
    },
  };
}
