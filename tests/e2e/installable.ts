import { randomBytes } from 'node:crypto';
import { expect } from 'vitest';
import { createChat } from '../../src/chat/chat.ts';
import { systemClock } from '../../src/clock.ts';
import { createLog } from '../../src/slack/log.ts';
import { type SlackService, startSlack } from '../../src/slack/start.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';
import { command, eventBody } from '../slack/payloads.ts';
import { asEvent, asForm, SIGNING_SECRET } from './signed.ts';
import { type SlackPeer, startSlackPeer } from './slack-peer.ts';

/** Two workspaces that have never heard of each other, and who installs the app in each. */
export const HERONS = { team: 'T0HERONS', installer: 'U0HERON', token: 'xoxb-herons' };
export const TERNS = { team: 'T0TERNS', installer: 'U0TERN', token: 'xoxb-terns' };
const BOTH = [HERONS, TERNS];
type Workspace = typeof HERONS;

/** Two instances of the service over one database, as behind a load balancer, that workspaces install. */
export interface Installable {
  readonly peer: SlackPeer;
  readonly store: RememberingKitchen;
  /** Workspaces whose reminders run, once for each instance. */
  readonly reminded: string[];
  readonly tokenKeys: readonly Buffer[];
  urlOf(at: number): string;
  /** Opens the install page of one instance, as a browser does. */
  begun(at: number): Promise<{ state: string; cookie: string }>;
  /** Comes back from Slack to an instance. */
  comeBack(at: number, code: string, state: string, cookie?: string): Promise<Response>;
  install(workspace: Workspace): Promise<void>;
  /** What is answered to a command. */
  ask(at: number, team: string, user: string, text: string): Promise<string[]>;
  notice(at: number, team: string, event: object, more?: object): Promise<Response>;
  stop(): Promise<void>;
}

export async function startInstallable(): Promise<Installable> {
  const peer = await startSlackPeer();
  const store = await rememberingKitchen(systemClock);
  const instances: { service: SlackService; url: string }[] = [];
  const reminded: string[] = [];
  const tokenKeys = [randomBytes(32)];
  knowsBoth(peer);
  for (let at = 0; at < 2; at += 1) {
    const service = await startSlack({
      settings: {
        install: { clientId: '1.2', clientSecret: 'secret', tokenKeys },
        signingSecret: SIGNING_SECRET,
        apiUrl: peer.apiUrl,
      },
      port: 0,
      host: '127.0.0.1',
      chat: createChat(store.kitchen, () => 'e2e'),
      clock: systemClock,
      logLevel: 'silent',
      log: createLog('silent'),
      memory: store.memory.workspaces(tokenKeys),
      databaseAnswers: store.memory.answers,
      startReminders: async (workspace) => {
        reminded.push(workspace);
        return { stop: async () => void reminded.splice(reminded.indexOf(workspace), 1) };
      },
    });
    instances.push({ service, url: `http://127.0.0.1:${service.port}` });
  }
  const urlOf = (at: number): string => instances[at]?.url ?? '';

  async function begun(at: number): Promise<{ state: string; cookie: string }> {
    const page = await fetch(`${urlOf(at)}/slack/install`, { redirect: 'manual' });
    expect(page.status).toBe(302);
    const slack = new URL(page.headers.get('location') ?? '');
    expect(slack.pathname).toBe('/oauth/v2/authorize');
    expect(slack.searchParams.get('scope')).toContain('usergroups:read');
    const cookie = (page.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
    return { state: slack.searchParams.get('state') ?? '', cookie };
  }
  async function comeBack(at: number, code: string, state: string, cookie?: string): Promise<Response> {
    const query = new URLSearchParams({ code, state });
    return fetch(`${urlOf(at)}/slack/oauth_redirect?${query}`, cookie ? { headers: { cookie } } : {});
  }

  return {
    peer,
    store,
    reminded,
    tokenKeys,
    urlOf,
    begun,
    comeBack,
    async install({ team }) {
      const { state, cookie } = await begun(0);
      const page = await comeBack(1, `code-${team}`, state, cookie);
      expect(await page.text()).toContain('Batchbell is installed.');
      expect(page.status).toBe(200);
    },
    async ask(at, team, user, text) {
      peer.calls.length = 0;
      const fields = command(text, { team_id: team, user_id: user, response_url: peer.responseUrl });
      const { status } = await fetch(
        `${urlOf(at)}/slack/events`,
        asForm({ ...(fields as Record<string, string>) }),
      );
      expect(status).toBe(200);
      const calls = await peer.answers(1, /^(?:respond|chat\.)/);
      return calls
        .filter(({ method }) => /^(?:respond|chat\.)/.test(method))
        .map(({ body }) => String(body.text));
    },
    notice: (at, team, event, more = {}) =>
      fetch(
        `${urlOf(at)}/slack/events`,
        asEvent(eventBody(event, { team_id: team, event_time: Math.floor(Date.now() / 1000) + 1, ...more })),
      ),
    async stop() {
      for (const { service } of instances) await service.stop();
      await store.close();
      await peer.close();
    },
  };
}

/** Slack as it knows both workspaces, each by the token it gave. */
function knowsBoth(peer: SlackPeer): void {
  peer.says.set('oauth.v2.access', ({ body }) => {
    const one = BOTH.find(({ team }) => body.code === `code-${team}`);
    if (!one) return { ok: false, error: 'invalid_code' };
    return {
      access_token: one.token,
      token_type: 'bot',
      scope: 'commands,chat:write',
      bot_user_id: `UBOT${one.team}`,
      app_id: 'A0',
      team: { id: one.team, name: 'a team' },
      enterprise: null,
      is_enterprise_install: false,
      authed_user: { id: one.installer },
    };
  });
  peer.says.set('auth.test', ({ token }) => {
    const one = BOTH.find((other) => other.token === token);
    return { bot_id: `B${one?.team}`, user_id: `UBOT${one?.team}`, team_id: one?.team };
  });
  peer.says.set('users.info', ({ token }) => ({
    user: { id: 'U', team_id: BOTH.find((one) => one.token === token)?.team },
  }));
}
