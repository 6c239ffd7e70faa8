import { randomBytes } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createChat } from '../../src/chat/chat.ts';
import { systemClock } from '../../src/clock.ts';
import { createLog } from '../../src/slack/log.ts';
import { type SlackService, startSlack } from '../../src/slack/start.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';
import { command, eventBody, mention } from '../slack/payloads.ts';
import { drawn, visits } from './fuzz-payloads.ts';
import { asEvent, asForm, SIGNING_SECRET } from './signed.ts';
import { pause, type SlackPeer, startSlackPeer } from './slack-peer.ts';

/** Two workspaces that have never heard of each other, and who installs the app in each. */
const HERONS = { team: 'T0HERONS', installer: 'U0HERON', token: 'xoxb-herons' };
const TERNS = { team: 'T0TERNS', installer: 'U0TERN', token: 'xoxb-terns' };
const BOTH = [HERONS, TERNS];

let peer: SlackPeer;
let store: RememberingKitchen;
/** Two instances of the service over one database, as behind a load balancer. */
const instances: { service: SlackService; url: string }[] = [];
const reminded: string[] = [];
const tokenKeys = [randomBytes(32)];

beforeAll(async () => {
  peer = await startSlackPeer();
  store = await rememberingKitchen(systemClock);
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
});
afterAll(async () => {
  for (const { service } of instances) await service.stop();
  await store.close();
  await peer.close();
});

const urlOf = (at: number): string => instances[at]?.url ?? '';

/** Opens the install page of one instance, as a browser does, and comes back from Slack to another. */
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
async function install({ team }: typeof HERONS): Promise<void> {
  const { state, cookie } = await begun(0);
  const page = await comeBack(1, `code-${team}`, state, cookie);
  expect(await page.text()).toContain('Batchbell is installed.');
  expect(page.status).toBe(200);
}
async function ask(at: number, team: string, user: string, text: string) {
  peer.calls.length = 0;
  const fields = command(text, { team_id: team, user_id: user, response_url: peer.responseUrl });
  const { status } = await fetch(
    `${urlOf(at)}/slack/events`,
    asForm({ ...(fields as Record<string, string>) }),
  );
  expect(status).toBe(200);
  return (await peer.answers(1)).map(({ body }) => String(body.text));
}
const notice = (at: number, team: string, event: object, more: object = {}) =>
  fetch(
    `${urlOf(at)}/slack/events`,
    asEvent(eventBody(event, { team_id: team, event_time: Math.floor(Date.now() / 1000) + 1, ...more })),
  );

describe('workspaces that install the app', () => {
  test('are nobody before: nothing is answered', async () => {
    expect(await ask(0, HERONS.team, HERONS.installer, '40 oat bars')).toEqual([]);
  });

  test.each([
    [
      'a state nobody began',
      async () => comeBack(0, 'code-T0HERONS', 'guessed', 'slack-app-oauth-state=guessed'),
    ],
    [
      'the state of another browser',
      async () => comeBack(0, 'code-T0HERONS', (await begun(0)).state, (await begun(0)).cookie),
    ],
    ['no cookie', async () => comeBack(0, 'code-T0HERONS', (await begun(0)).state)],
    [
      'a code Slack does not know',
      async () => {
        const { state, cookie } = await begun(0);
        return comeBack(0, 'guessed', state, cookie);
      },
    ],
  ])('are refused with %s', async (_, attempt) => {
    const page = await attempt();
    expect(page.status).toBe(400);
    expect(await page.text()).not.toMatch(/at \w+ \(|Error:/);
    expect(await store.memory.workspaces(tokenKeys).installations.workspaces()).toEqual([]);
  });

  test('install at one instance what another began, once, and are served by both', async () => {
    const { state, cookie } = await begun(0);
    expect((await comeBack(1, 'code-T0HERONS', state, cookie)).status).toBe(200);
    expect((await comeBack(1, 'code-T0HERONS', state, cookie)).status).toBe(400);
    await pause(50);
    expect(reminded).toContain(HERONS.team);
    const [answer] = await ask(1, HERONS.team, 'U0ANYBODY', '40 oat bars');
    expect(answer).toContain('40');
    expect(peer.calls.every(({ token }) => token === undefined || token === HERONS.token)).toBe(true);
  });

  test('have their installer as first staff, and nobody else', async () => {
    expect((await ask(1, HERONS.team, HERONS.installer, 'made 12 oat bars'))[0]).not.toContain(
      'kitchen staff',
    );
    expect((await ask(1, HERONS.team, TERNS.installer, 'made 12 oat bars'))[0]).toContain('kitchen staff');
  });

  test('find nothing of each other, and are answered with their own tokens', async () => {
    await install(TERNS);
    const own = await ask(1, HERONS.team, HERONS.installer, 'stock');
    const other = await ask(1, TERNS.team, TERNS.installer, 'stock');
    expect(own[0]).toMatch(/12/);
    expect(other[0]).not.toMatch(/12/);
    expect(peer.calls.map(({ token }) => token).filter((token) => token !== undefined)).not.toContain(
      HERONS.token,
    );
  });

  test('answer an event once, whichever instances get it', async () => {
    peer.calls.length = 0;
    const body = eventBody(mention('', { text: '<@UBOTT0HERONS> 40 oat bars', team: HERONS.team }), {
      team_id: HERONS.team,
      authorizations: [{ team_id: HERONS.team, user_id: 'UBOTT0HERONS', is_bot: true }],
    });
    await Promise.all([0, 1].map((at) => fetch(`${urlOf(at)}/slack/events`, asEvent(body))));
    const posts = (await peer.answers(1)).filter(({ method }) => method === 'chat.postMessage');
    expect(posts).toHaveLength(1);
  });

  test('are ready, and counted without a name', async () => {
    expect(await (await fetch(`${urlOf(0)}/readyz`)).json()).toEqual({ serving: true, database: true });
    await ask(0, HERONS.team, HERONS.installer, '40 oat bars');
    const metrics = await (await fetch(`${urlOf(0)}/metrics`)).text();
    expect(metrics).toContain('batchbell_answer_seconds_bucket');
    expect(metrics).not.toMatch(/T0HERONS|U0|oat/);
  });

  test('keep a fresh installation when an old uninstall arrives late', async () => {
    await notice(1, HERONS.team, { type: 'app_uninstalled' }, { event_time: 1_000_000 });
    await pause(100);
    expect(await ask(1, HERONS.team, HERONS.installer, '40 oat bars')).toHaveLength(1);
  });

  test('lose only a person’s token without leaving', async () => {
    await notice(1, HERONS.team, { type: 'tokens_revoked', tokens: { oauth: ['U1'], bot: [] } });
    await pause(100);
    expect(await ask(1, HERONS.team, HERONS.installer, '40 oat bars')).toHaveLength(1);
  });

  test.each([
    [HERONS, { type: 'app_uninstalled' }],
    [TERNS, { type: 'tokens_revoked', tokens: { oauth: [], bot: ['UBOT'] } }],
  ])('leave: the token is gone and reminders stop (%o)', async ({ team, installer }, event) => {
    await notice(1, team, event);
    await pause(150);
    expect(await ask(1, team, installer, '40 oat bars')).toEqual([]);
    expect(await store.memory.workspaces(tokenKeys).installations.get(team)).toBeUndefined();
    expect(reminded.filter((one) => one === team).length).toBeLessThan(2);
  });
});

describe('whatever is asked of the pages of an install', () => {
  test('is answered, never by a crash or a 5xx, and nothing that was sent stands in the page', async () => {
    const statuses = new Map<number, number>();
    const all = drawn(visits, 4 * (Number(process.env.FUZZED) || 300));
    for (const [at, { path, query, raw, method, cookie }] of all.entries()) {
      const asked = raw ?? new URLSearchParams(query).toString();
      const response = await fetch(`${urlOf(at % 2)}${path}?${asked}`, {
        method,
        redirect: 'manual',
        ...(cookie === undefined ? {} : { headers: { cookie } }),
      });
      const page = await response.text();
      statuses.set(response.status, (statuses.get(response.status) ?? 0) + 1);
      expect(page).not.toContain('<script');
      expect(page).not.toMatch(/xoxb|secret|at .*\.ts:\d/);
    }
    expect([...statuses.keys()].filter((status) => status >= 500)).toEqual([]);
    // Some began an install, some came back from none.
    expect([...statuses.keys()].sort()).toEqual(expect.arrayContaining([302, 400, 405]));
    for (const { url } of instances) expect((await fetch(`${url}/healthz`)).status).toBe(200);
  }, 600_000);
});
