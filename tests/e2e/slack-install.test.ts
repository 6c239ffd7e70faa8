import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { eventBody, mention } from '../slack/payloads.ts';
import { HERONS, type Installable, startInstallable, TERNS } from './installable.ts';
import { asEvent } from './signed.ts';
import { pause } from './slack-peer.ts';

let service: Installable;
beforeAll(async () => {
  service = await startInstallable();
});
afterAll(() => service.stop());

const begun: Installable['begun'] = (at) => service.begun(at);
const comeBack: Installable['comeBack'] = (...given) => service.comeBack(...given);
const install: Installable['install'] = (workspace) => service.install(workspace);
const ask: Installable['ask'] = (...given) => service.ask(...given);
const notice: Installable['notice'] = (...given) => service.notice(...given);
const urlOf: Installable['urlOf'] = (at) => service.urlOf(at);

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
    expect(await service.store.memory.workspaces(service.tokenKeys).installations.workspaces()).toEqual([]);
  });

  test('install at one instance what another began, once, and are served by both', async () => {
    const { state, cookie } = await begun(0);
    expect((await comeBack(1, 'code-T0HERONS', state, cookie)).status).toBe(200);
    expect((await comeBack(1, 'code-T0HERONS', state, cookie)).status).toBe(400);
    await pause(50);
    expect(service.reminded).toContain(HERONS.team);
    const [answer] = await ask(1, HERONS.team, 'U0ANYBODY', '40 oat bars');
    expect(answer).toContain('40');
    expect(service.peer.calls.every(({ token }) => token === undefined || token === HERONS.token)).toBe(true);
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
    expect(service.peer.calls.map(({ token }) => token).filter((token) => token !== undefined)).not.toContain(
      HERONS.token,
    );
  });

  test('answer an event once, whichever instances get it', async () => {
    service.peer.calls.length = 0;
    const body = eventBody(mention('', { text: '<@UBOTT0HERONS> 40 oat bars', team: HERONS.team }), {
      team_id: HERONS.team,
      authorizations: [{ team_id: HERONS.team, user_id: 'UBOTT0HERONS', is_bot: true }],
    });
    await Promise.all([0, 1].map((at) => fetch(`${urlOf(at)}/slack/events`, asEvent(body))));
    const posts = (await service.peer.answers(1)).filter(({ method }) => method === 'chat.postMessage');
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
    expect(await service.store.memory.workspaces(service.tokenKeys).installations.get(team)).toBeUndefined();
    expect(service.reminded.filter((one) => one === team).length).toBeLessThan(2);
  });
});
