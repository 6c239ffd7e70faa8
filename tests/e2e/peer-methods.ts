import { BOT, TEAM } from '../slack/payloads.ts';
import { type Channels, directWith } from './channels.ts';

/** A call to the local Slack, and what it is answered from. */
interface Asked {
  readonly user: object;
  readonly socketUrl: string;
  readonly origin: string;
  readonly channels: Channels;
  readonly body: Record<string, unknown>;
}

/** What each method answers when all is well. */
export const METHODS: Readonly<Record<string, (asked: Asked) => object>> = {
  'auth.test': () => ({ user_id: BOT.botUserId, bot_id: BOT.botId, team_id: TEAM, team: 'Herons' }),
  'users.info': ({ user }) => ({ user: { id: 'U', team_id: TEAM, ...user } }),
  'chat.postMessage': ({ channels, body }) => channels.post(body),
  'chat.postEphemeral': () => ({ message_ts: '1789000009.0002' }),
  'chat.update': ({ channels, body }) => channels.update(body),
  'views.open': () => ({ view: { id: 'V1', hash: 'h1' } }),
  'views.update': () => ({ view: { id: 'V1', hash: 'h2' } }),
  'views.publish': () => ({ view: { id: 'V0', hash: 'h1' } }),
  'conversations.history': ({ channels, body }) => ({ messages: channels.between(body) }),
  'conversations.open': ({ body }) => ({ channel: { id: directWith(String(body.users)) } }),
  'files.getUploadURLExternal': ({ origin, channels }) => channels.upload(origin),
  'files.completeUploadExternal': () => ({ files: [] }),
  'apps.connections.open': ({ socketUrl }) => ({ url: socketUrl }),
};
