import { createChat } from '../../src/chat/chat.ts';
import { startReminders } from '../../src/remind.ts';
import { createLog } from '../../src/slack/log.ts';
import type { SlackSettings } from '../../src/slack/settings.ts';
import { type SlackService, startSlack } from '../../src/slack/start.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';
import { BOT, STAFF, TEAM } from '../slack/payloads.ts';
import { asEvent, asForm, asPress, SIGNING_SECRET } from './signed.ts';
import { type PeerCall, type SlackPeer, startSlackPeer } from './slack-peer.ts';

export type Mode = 'http' | 'socket';

/** The service with its memory and its reminders, and a person at the other end of the wire. */
export interface WholeService {
  readonly peer: SlackPeer;
  readonly store: RememberingKitchen;
  readonly log: string[];
  readonly clock: { now: number; nowMs(): number };
  readonly url: string;
  /** Each sends one payload and resolves with what the acknowledgement said. */
  command(payload: object): Promise<unknown>;
  event(payload: object): Promise<unknown>;
  interact(payload: object): Promise<unknown>;
  /** Calls people see, after the last `forget`, once there are `count`. */
  seen(count: number, counted?: RegExp): Promise<PeerCall[]>;
  forget(): void;
  stop(): Promise<void>;
}

const rethrow = (error: unknown): never => {
  throw error;
};

/** Starts everything on loopback; `before` fills the kitchen first. */
export async function startWhole(
  mode: Mode,
  settings: Partial<SlackSettings> = {},
  before: (store: RememberingKitchen, nowMs: number) => Promise<void> = async () => {},
): Promise<WholeService> {
  // Slack's own stamps are of now, and the service checks them: its clock may not stand elsewhere.
  const clock = { now: Date.now(), nowMs: () => clock.now };
  const store = await rememberingKitchen(clock);
  await before(store, clock.now);
  const peer = await startSlackPeer();
  const log: string[] = [];
  const { kitchen, memory } = store;
  let service: SlackService;
  try {
    service = await startSlack({
      settings: {
        botToken: BOT.token,
        apiUrl: peer.apiUrl,
        staff: [STAFF],
        kitchenChannel: 'C0KITCHEN',
        ...(mode === 'http' ? { signingSecret: SIGNING_SECRET } : { appToken: 'xapp-test' }),
        ...settings,
      },
      port: 0,
      host: '127.0.0.1',
      chat: createChat(kitchen, rethrow),
      clock,
      logLevel: 'debug',
      log: createLog('debug', { write: (line) => log.push(line) }),
      memory: memory.workspaces([]),
      databaseAnswers: memory.answers,
      startReminders: (workspace, messenger) =>
        startReminders({ kitchen, memory, workspace, messenger, report: (error) => log.push(String(error)) }),
    });
  } catch (error) {
    await peer.close();
    await store.close();
    throw error;
  }
  const url = `http://127.0.0.1:${service.port}`;
  const post = async (request: RequestInit): Promise<unknown> => {
    const response = await fetch(`${url}/slack/events`, request);
    const text = await response.text();
    if (response.status !== 200) throw new Error(`answered ${response.status}`);
    return text === '' ? undefined : JSON.parse(text);
  };
  const answers = { response_url: peer.responseUrl };
  return {
    peer,
    store,
    log,
    clock,
    url,
    command: (payload) =>
      mode === 'http'
        ? post(asForm({ ...(payload as Record<string, string>), ...answers }))
        : peer.answered('slash_commands', { ...payload, ...answers }),
    event: (payload) => (mode === 'http' ? post(asEvent(payload)) : peer.answered('events_api', payload)),
    interact: (payload) =>
      mode === 'http'
        ? post(asPress({ ...payload, ...answers }))
        : peer.answered('interactive', { ...payload, ...answers }),
    seen: (count, counted) => peer.answers(count, counted),
    forget: () => {
      peer.calls.length = 0;
    },
    async stop() {
      await service.stop();
      await peer.close();
      await store.close();
    },
  };
}

export const WORKSPACE = TEAM;
