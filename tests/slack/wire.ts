import type { App, Receiver, ReceiverEvent } from '@slack/bolt';
import nock from 'nock';
import type { Chat } from '../../src/chat/chat.ts';
import { createChat } from '../../src/chat/chat.ts';
import { openKitchen } from '../../src/open-kitchen.ts';
import { createSlackApp, type SlackApp } from '../../src/slack/app.ts';
import { authorizeServed } from '../../src/slack/authorize.ts';
import { createLog } from '../../src/slack/log.ts';
import { createMetrics } from '../../src/slack/metrics.ts';
import { listedRoles, type RoleList } from '../../src/slack/role-list.ts';
import { createSeen, type Seen } from '../../src/slack/seen.ts';
import { oneWorkspace, type ServedWorkspaces } from '../../src/slack/workspaces/served.ts';
import { BOT, STAFF, TEAM } from './payloads.ts';

export const API = 'http://slack.test/api/';

/** A call that reached Slack: the method (or `respond`) and what was sent. */
export interface Call {
  readonly method: string;
  readonly body: Record<string, unknown>;
}

/** The transport of a test: payloads are pushed straight into Bolt. */
export class InMemoryReceiver implements Receiver {
  private app: App | undefined;
  /** What the last acknowledgement said. */
  acknowledged: unknown;
  init(app: App): void {
    this.app = app;
  }
  async start(): Promise<void> {}
  async stop(): Promise<void> {}
  /** Resolves with how often the payload was acknowledged. */
  async send(body: ReceiverEvent['body']): Promise<number> {
    let acks = 0;
    this.acknowledged = undefined;
    await this.app?.processEvent({
      body,
      ack: async (answer) => {
        acks += 1;
        this.acknowledged = answer;
      },
    });
    return acks;
  }
}

/**
 * Slack's HTTP, faked at the wire; every call is kept. `fail` gives a method's error, or an HTTP status for `respond`;
 * `user` what `users.info` says, of everybody or of each; `says` what a method answers beside the usual.
 */
export function fakeSlack(
  fail: Record<string, string | number> = {},
  user: object | ((id: string) => object) = {},
  says: Readonly<Record<string, (body: Record<string, unknown>) => object>> = {},
): Call[] {
  const calls: Call[] = [];
  nock.cleanAll();
  nock('http://slack.test')
    .persist()
    .post(/^\/api\//)
    .reply((uri, body) => {
      const method = uri.slice('/api/'.length);
      const fields = fieldsOf(body);
      calls.push({ method, body: fields });
      const who = typeof user === 'function' ? user(String(fields.user)) : user;
      const error = fail[method];
      if (error === 'ratelimited') return [429, '', { 'retry-after': '1' }];
      if (typeof error === 'string') return [200, { ok: false, error }];
      const view = { id: 'V1', hash: 'h1' };
      return [200, { ok: true, ts: '1.2', user: { team_id: TEAM, ...who }, view, ...says[method]?.(fields) }];
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
  const objects = Object.entries(fields).map(([name, value]) =>
    (name === 'blocks' || name === 'view') && typeof value === 'string'
      ? [name, JSON.parse(value)]
      : [name, value],
  );
  return Object.fromEntries(objects);
}

export const sent = (calls: readonly Call[]): Call[] => calls.filter((call) => call.method !== 'users.info');

export interface Wired extends SlackApp {
  readonly receiver: InMemoryReceiver;
  readonly waits: number[];
  /** What waiting does; nothing unless a test says so. */
  onWait: (ms: number) => Promise<void> | undefined;
  readonly clock: { now: number; nowMs(): number };
  readonly log: string[];
}

const rethrow = (error: unknown): never => {
  throw error;
};

function movableClock(): Wired['clock'] {
  const clock = { now: Date.UTC(2026, 8, 14, 15), nowMs: () => clock.now };
  return clock;
}

export interface Given {
  readonly clock?: Wired['clock'];
  readonly staff?: readonly string[];
  readonly interns?: readonly string[];
  readonly patienceMs?: number;
  readonly roleList?: RoleList;
  readonly workspaces?: ServedWorkspaces;
  readonly seen?: Seen;
  readonly stopReminders?: (workspace: string) => Promise<void>;
}

/** The real app over an in-memory transport, with a clock the test moves. */
export async function wire(chat?: Chat, given: Given = {}): Promise<Wired> {
  const receiver = new InMemoryReceiver();
  const clock = given.clock ?? movableClock();
  const waits: number[] = [];
  const log: string[] = [];
  const workspaces = given.workspaces ?? oneWorkspace(BOT);
  const slack = await createSlackApp({
    receiver,
    authorize: authorizeServed(workspaces),
    farewell: { workspaces, stopReminders: given.stopReminders ?? (async () => {}) },
    chat: chat ?? createChat(await openKitchen(clock), rethrow),
    clock,
    log: createLog('debug', { write: (line) => log.push(line) }),
    roleList: given.roleList ?? listedRoles(given.staff ?? [STAFF], given.interns),
    metrics: createMetrics(clock),
    seen: given.seen ?? createSeen(clock),
    apiUrl: API,
    ...(given.patienceMs === undefined ? {} : { patienceMs: given.patienceMs }),
    wait: async (ms) => {
      waits.push(ms);
      await wired.onWait(ms);
    },
  });
  const wired: Wired = { ...slack, receiver, waits, clock, log, onWait: () => undefined };
  return wired;
}
