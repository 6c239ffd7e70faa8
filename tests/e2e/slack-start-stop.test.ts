import type { AddressInfo } from 'node:net';
import { createServer } from 'node:net';
import { afterEach, describe, expect, test } from 'vitest';
import type { Chat } from '../../src/chat/chat.ts';
import { systemClock } from '../../src/clock.ts';
import { createLog } from '../../src/slack/log.ts';
import { startSlack } from '../../src/slack/start.ts';
import { BOT, command } from '../slack/payloads.ts';
import { kitchenChat } from './service.ts';
import { asForm, SIGNING_SECRET } from './signed.ts';
import { pause, type SlackPeer, startSlackPeer } from './slack-peer.ts';

const peers: SlackPeer[] = [];
afterEach(async () => {
  for (const peer of peers.splice(0)) await peer.close();
});
const newPeer = async (): Promise<SlackPeer> => {
  const peer = await startSlackPeer();
  peers.push(peer);
  return peer;
};
const kitchen = await kitchenChat();
const parts = (settings: object, more: { chat?: Chat; port?: number } = {}) => ({
  settings: { botToken: BOT.token, signingSecret: SIGNING_SECRET, ...settings },
  port: 0,
  host: '127.0.0.1',
  chat: kitchen,
  clock: systemClock,
  logLevel: 'silent',
  log: createLog('silent'),
  ...more,
});

describe('starting', () => {
  test.each(['invalid_auth', 'account_inactive', 'token_revoked'])(
    'a bot token Slack refuses (%s) is told by the name of its variable, never by its value',
    async (error) => {
      const peer = await newPeer();
      peer.fail.set('auth.test', error);
      const started = startSlack(parts({ apiUrl: peer.apiUrl }));
      await expect(started).rejects.toMatchObject({ name: 'Problem', code: 'bad_option' });
      const told = await started.catch((problem) => `${problem.message} ${problem.hint}`);
      expect(told).toContain(`SLACK_BOT_TOKEN was refused by Slack (${error})`);
      expect(told).not.toContain(BOT.token);
    },
  );

  test('an app token Slack refuses is told by its name', async () => {
    const peer = await newPeer();
    peer.fail.set('apps.connections.open', 'not_authed');
    const started = startSlack(parts({ apiUrl: peer.apiUrl, appToken: 'xapp-wrong' }));
    await expect(started).rejects.toMatchObject({
      message: 'SLACK_APP_TOKEN was refused by Slack (not_authed).',
    });
  });

  test('a Slack that is not there is told by its address', async () => {
    const started = startSlack(parts({ apiUrl: 'http://127.0.0.1:9/api/' }));
    await expect(started).rejects.toMatchObject({
      code: 'unavailable',
      message: expect.stringContaining('127.0.0.1:9'),
    });
  });

  test.each([{}, { appToken: 'xapp-test' }])(
    'a port that is taken is told by its number %o',
    async (settings) => {
      const peer = await newPeer();
      const other = createServer();
      await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve));
      const { port } = other.address() as AddressInfo;
      const started = startSlack(parts({ apiUrl: peer.apiUrl, ...settings }, { port }));
      await expect(started).rejects.toMatchObject({
        code: 'bad_option',
        message: `PORT ${port} cannot be opened: something else is listening there.`,
      });
      await new Promise((resolve) => other.close(resolve));
    },
  );

  test('without a signing secret and an app token says which to set', async () => {
    const { settings, ...others } = parts({});
    const started = startSlack({ ...others, settings: { botToken: settings.botToken } });
    await expect(started).rejects.toMatchObject({ message: 'SLACK_SIGNING_SECRET is not set.' });
  });
});

describe('stopping', () => {
  test('finishes what was acknowledged and takes nothing new', async () => {
    const peer = await newPeer();
    let finish = (): void => {};
    const chat: Chat = {
      ...kitchen,
      async ask(request) {
        await new Promise<void>((resolve) => {
          finish = resolve;
        });
        return kitchen.ask(request);
      },
    };
    const service = await startSlack(parts({ apiUrl: peer.apiUrl }, { chat }));
    const url = `http://127.0.0.1:${service.port}/slack/events`;
    const fields = command('40 oat bars', { response_url: peer.responseUrl }) as Record<string, string>;
    expect((await fetch(url, asForm(fields))).status).toBe(200);
    while (!peer.calls.some((call) => call.method === 'users.info')) await pause(5);
    await pause(20);
    const stopped = service.stop();
    await pause(20);
    const late = await fetch(url, asForm(fields)).then(
      (response) => response.status,
      () => 503,
    );
    expect(late).toBe(503);
    expect(peer.calls.filter((call) => call.method === 'respond')).toEqual([]);
    finish();
    await stopped;
    expect(peer.calls.filter((call) => call.method === 'respond')).toHaveLength(1);
  });
});
