import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { command, directMessage, eventBody, mention, press } from '../slack/payloads.ts';
import { type Running, startService } from './service.ts';
import { pause } from './slack-peer.ts';

let running: Running;
beforeAll(async () => {
  running = await startService('socket');
});
afterAll(() => running.stop());
beforeEach(() => {
  running.peer.calls.length = 0;
});

const kitchen = (text: string) => command(text, { response_url: running.peer.responseUrl });

describe('over Socket Mode', () => {
  test('a command is acknowledged at once and answered', async () => {
    expect(await running.peer.envelope('slash_commands', kitchen('40 oat bars'))).toBeLessThan(1000);
    expect(await running.peer.answers(1)).toMatchObject([{ method: 'respond' }]);
  });

  test('a mention in a thread, a direct message and a press are answered', async () => {
    const { peer } = running;
    await peer.envelope('events_api', eventBody(mention('40 oat bars', { thread_ts: '1.1' })));
    await peer.answers(1);
    await peer.envelope('events_api', eventBody(directMessage('40 oat bars')));
    await peer.answers(2);
    await peer.envelope('interactive', press('macros oat bars', { response_url: peer.responseUrl }));
    expect(
      (await peer.answers(3)).map(({ method, body }) => [method, body.thread_ts ?? body.channel]),
    ).toEqual([
      ['chat.postMessage', '1.1'],
      ['chat.postMessage', 'D0ATHLETE'],
      ['respond', undefined],
    ]);
  });

  test('an event Slack sends again is answered once', async () => {
    const body = eventBody(mention('40 oat bars'));
    await running.peer.envelope('events_api', body);
    await running.peer.envelope('events_api', body, { retry_attempt: 1, retry_reason: 'timeout' });
    expect(await running.peer.answers(1)).toHaveLength(1);
  });

  test('the app token opens sockets and nothing else; posts are the bot', async () => {
    await running.peer.envelope('events_api', eventBody(directMessage('40 oat bars')));
    await running.peer.answers(1);
    expect(running.peer.calls.map((call) => call.token)).toEqual(running.peer.calls.map(() => 'xoxb-test'));
  });

  test('a recycled socket is replaced within four seconds, and commands are answered again', async () => {
    const startedMs = performance.now();
    running.peer.recycle();
    const opened = () => running.peer.calls.find((call) => call.method === 'apps.connections.open');
    while (!opened() && performance.now() - startedMs < 8_000) await pause(20);
    expect(opened()?.token).toBe('xapp-test');
    expect((opened()?.atMs ?? Number.POSITIVE_INFINITY) - startedMs).toBeLessThan(4_000);
    while (running.peer.sockets() === 0) await pause(20);
    await running.peer.envelope('slash_commands', kitchen('40 oat bars'));
    expect(await running.peer.answers(1)).toMatchObject([{ method: 'respond' }]);
  });

  test('says over HTTP that it is well', async () => {
    expect((await fetch(`${running.url}/healthz`)).status).toBe(200);
    expect((await fetch(`${running.url}/slack/events`, { method: 'POST' })).status).toBe(404);
  });
});
