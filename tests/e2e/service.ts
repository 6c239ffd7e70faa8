import { type Chat, createChat } from '../../src/chat/chat.ts';
import { systemClock } from '../../src/clock.ts';
import { openKitchen } from '../../src/open-kitchen.ts';
import { createLog } from '../../src/slack/log.ts';
import type { SlackSettings } from '../../src/slack/settings.ts';
import { type SlackService, startSlack } from '../../src/slack/start.ts';
import { BOT, STAFF } from '../slack/payloads.ts';
import { SIGNING_SECRET } from './signed.ts';
import { type SlackPeer, startSlackPeer } from './slack-peer.ts';

export interface Running {
  readonly peer: SlackPeer;
  readonly service: SlackService;
  readonly log: string[];
  readonly url: string;
  stop(): Promise<void>;
}

const rethrow = (error: unknown): never => {
  throw error;
};

/** The chat over the kitchen that comes along. */
export const kitchenChat = async (): Promise<Chat> => createChat(await openKitchen(systemClock), rethrow);

/** The whole service on loopback against a local Slack, over HTTP or Socket Mode. */
export async function startService(
  mode: 'http' | 'socket',
  more: Partial<SlackSettings> = {},
): Promise<Running> {
  const peer = await startSlackPeer();
  const log: string[] = [];
  const settings = {
    botToken: BOT.token,
    apiUrl: peer.apiUrl,
    staff: [STAFF],
    ...(mode === 'http' ? { signingSecret: SIGNING_SECRET } : { appToken: 'xapp-test' }),
    ...more,
  };
  const service = await startSlack({
    settings,
    port: 0,
    host: '127.0.0.1',
    chat: await kitchenChat(),
    clock: systemClock,
    logLevel: 'debug',
    log: createLog('debug', { write: (line) => log.push(line) }),
  }).catch(async (error) => {
    await peer.close();
    throw error;
  });
  return {
    peer,
    service,
    log,
    url: `http://127.0.0.1:${service.port}`,
    async stop() {
      await service.stop();
      await peer.close();
    },
  };
}
