import type { App, Receiver, ReceiverEvent } from '@slack/bolt';
import nock from 'nock';
import type { Chat } from '../../src/chat/chat.ts';
import { createChat } from '../../src/chat/chat.ts';
import { openKitchen } from '../../src/open-kitchen.ts';
import { createSlackApp, type SlackApp } from '../../src/slack/app.ts';
import { createLog } from '../../src/slack/log.ts';
import { listedRoles } from '../../src/slack/roles.ts';

export const BOT = { token: 'xoxb-test', botId: 'B0BOT', botUserId: 'U0BOT' };
export const TEAM = 'T0HERONS';
export const STAFF = 'U0STAFF';
export const ATHLETE = 'U0ATHLETE';
export const API = 'http://slack.test/api/';
export const RESPONSE_URL = 'http://slack.test/commands/answer';

/** A call that reached Slack: the method (or `respond`) and what was sent. */
export interface Call {
  readonly method: string;
  readonly body: Record<string, unknown>;
}

/** The transport of a test: payloads are pushed straight into Bolt. */
export class InMemoryReceiver implements Receiver {
  private app: App | undefined;
  init(app: App): void {
    this.app = app;
  }
  async start(): Promise<void> {}
  async stop(): Promise<void> {}
  /** Resolves with how often the payload was acknowledged. */
  async send(body: ReceiverEvent['body']): Promise<number> {
    let acks = 0;
    await this.app?.processEvent({
      body,
      ack: async () => {
        acks += 1;
      },
    });
    return acks;
  }
}

/** Slack's HTTP, faked at the wire; every call is kept. `fail` gives a method's error, or an HTTP status for `respond`. */
export function fakeSlack(fail: Record<string, string | number> = {}, user: object = {}): Call[] {
  const calls: Call[] = [];
  nock('http://slack.test')
    .persist()
    .post(/^\/api\//)
    .reply((uri, body) => {
      const method = uri.slice('/api/'.length);
      calls.push({ method, body: fieldsOf(body) });
      const error = fail[method];
      if (error === 'ratelimited') return [429, '', { 'retry-after': '1' }];
      if (typeof error === 'string') return [200, { ok: false, error }];
      return [200, { ok: true, ts: '1.2', user: { team_id: TEAM, ...user } }];
    })
    .post('/commands/answer')
    .reply((_uri, body) => {
      calls.push({ method: 'respond', body: body as Record<string, unknown> });
      return [typeof fail.respond === 'number' ? fail.respond : 200, 'ok'];
    });
  return calls;
}

function fieldsOf(body: unknown): Record<string, unknown> {
  const fields =
    typeof body === 'string' ? Object.fromEntries(new URLSearchParams(body)) : { ...(body as object) };
  const { blocks } = fields as { blocks?: unknown };
  return typeof blocks === 'string' ? { ...fields, blocks: JSON.parse(blocks) } : fields;
}

export const sent = (calls: readonly Call[]): Call[] => calls.filter((call) => call.method !== 'users.info');

export interface Wired extends SlackApp {
  readonly receiver: InMemoryReceiver;
  readonly waits: number[];
  readonly clock: { now: number; nowMs(): number };
  readonly log: string[];
}

const rethrow = (error: unknown): never => {
  throw error;
};

/** The real app over an in-memory transport, with a clock the test moves. */
export async function wire(chat?: Chat): Promise<Wired> {
  const receiver = new InMemoryReceiver();
  const clock = { now: Date.UTC(2026, 8, 14, 15), nowMs: () => clock.now };
  const waits: number[] = [];
  const log: string[] = [];
  const slack = await createSlackApp({
    receiver,
    identity: BOT,
    chat: chat ?? createChat(openKitchen(clock), rethrow),
    clock,
    log: createLog('debug', { write: (line) => log.push(line) }),
    roleList: listedRoles([STAFF]),
    apiUrl: API,
    wait: async (ms) => void waits.push(ms),
  });
  return { ...slack, receiver, waits, clock, log };
}

let count = 0;
const next = (): number => {
  count += 1;
  return count;
};

export const command = (text: string, more: object = {}) => ({
  command: '/kitchen',
  text,
  response_url: RESPONSE_URL,
  trigger_id: `trigger.${next()}`,
  user_id: ATHLETE,
  user_name: 'somebody',
  team_id: TEAM,
  team_domain: 'herons',
  channel_id: 'C0KITCHEN',
  channel_name: 'kitchen',
  api_app_id: 'A0',
  ...more,
});

export const eventBody = (event: object, more: object = {}) => ({
  type: 'event_callback',
  event_id: `Ev${next()}`,
  event_time: 1_789_000_000,
  team_id: TEAM,
  api_app_id: 'A0',
  authorizations: [{ team_id: TEAM, user_id: BOT.botUserId, is_bot: true, is_enterprise_install: false }],
  event,
  ...more,
});

export const mention = (text: string, more: object = {}) => ({
  type: 'app_mention',
  user: ATHLETE,
  text: `<@${BOT.botUserId}> ${text}`,
  ts: `1789000000.${next()}`,
  event_ts: '1789000000.0001',
  channel: 'C0KITCHEN',
  team: TEAM,
  ...more,
});

export const directMessage = (text: string, more: object = {}) => ({
  type: 'message',
  channel_type: 'im',
  user: ATHLETE,
  text,
  ts: `1789000001.${next()}`,
  event_ts: '1789000001.0001',
  channel: 'D0ATHLETE',
  team: TEAM,
  ...more,
});

export const press = (value: string, more: object = {}, blockId = 'next|channel|') => ({
  type: 'block_actions',
  trigger_id: `trigger.${next()}`,
  team: { id: TEAM, domain: 'herons' },
  user: { id: ATHLETE, team_id: TEAM },
  channel: { id: 'C0KITCHEN', name: 'kitchen' },
  container: { type: 'message', message_ts: '1789000002.0001', channel_id: 'C0KITCHEN', is_ephemeral: false },
  response_url: RESPONSE_URL,
  actions: [{ type: 'button', action_id: 'next_step_1', block_id: blockId, value, action_ts: `${next()}` }],
  ...more,
});
