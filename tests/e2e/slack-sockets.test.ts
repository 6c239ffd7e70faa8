import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { command, directMessage, eventBody } from '../slack/payloads.ts';
import { type Running, startService } from './service.ts';
import { pause } from './slack-peer.ts';

let running: Running;
beforeEach(async () => {
  running = await startService('socket');
  running.peer.calls.length = 0;
});
afterEach(() => running.stop());

const kitchen = (text = '40 oat bars') => command(text, { response_url: running.peer.responseUrl });
const opened = () => running.peer.calls.filter(({ method }) => method === 'apps.connections.open');
const replies = () => running.peer.calls.filter(({ method }) => /^(?:respond|chat\.)/.test(method));
const page = async (path: string) => {
  const response = await fetch(`${running.url}${path}`);
  return { status: response.status, text: await response.text() };
};
const metric = async (name: string): Promise<number> =>
  Number(new RegExp(`^${name} (\\S+)`, 'm').exec((await page('/metrics')).text)?.[1]);
const withoutSocketS = () => metric('batchbell_without_socket_seconds');
async function until(isSo: () => boolean | Promise<boolean>, mostMs = 8_000): Promise<void> {
  const end = performance.now() + mostMs;
  while (!(await isSo())) {
    if (performance.now() > end) throw new Error('it did not come to that');
    await pause(5);
  }
}

describe('a socket that Slack takes away', () => {
  test.each(['warning', 'refresh_requested'] as const)(
    'with a %s is replaced before it is let go: no second without one, nothing lost, nothing twice',
    async (reason) => {
      const { peer } = running;
      let fewest = peer.sockets();
      const acks: Promise<number>[] = [];
      peer.recycle(reason);
      for (let at = 0; at < 60; at += 1) {
        acks.push(peer.envelope('slash_commands', kitchen(`${at + 2} oat bars`)));
        fewest = Math.min(fewest, peer.sockets());
        await pause(10);
      }
      expect(Math.max(...(await Promise.all(acks)))).toBeLessThan(1_000);
      await until(() => replies().length >= acks.length);
      await pause(100);
      expect(replies()).toHaveLength(acks.length);
      expect(opened()).toHaveLength(1);
      expect(fewest).toBe(1);
      expect(await withoutSocketS()).toBe(0);
      expect(await metric('batchbell_socket_reconnects_total')).toBe(1);
      await until(() => peer.sockets() === 1);
      expect(await withoutSocketS()).toBe(0);
    },
  );

  test('is asked for once, however often Slack says so', async () => {
    running.peer.recycle('warning');
    running.peer.recycle('refresh_requested');
    await until(() => running.peer.sockets() === 2);
    await until(() => running.peer.sockets() === 1);
    expect(opened()).toHaveLength(1);
  });

  test('while no other can be had is kept for as long as Slack keeps it', async () => {
    const { peer } = running;
    peer.fail.set('apps.connections.open', 'internal_error');
    peer.recycle('warning');
    await until(() => opened().length >= 2);
    await peer.envelope('slash_commands', kitchen());
    await until(() => replies().length === 1);
    peer.fail.clear();
    await until(() => peer.sockets() === 2);
    expect(await withoutSocketS()).toBe(0);
  });
});

describe('a socket that is cut', () => {
  test('is followed by another within half a second; the gap is measured', async () => {
    const { peer } = running;
    const cutMs = performance.now();
    peer.cut();
    await until(() => peer.sockets() === 1 && opened().length === 1);
    const gapMs = performance.now() - cutMs;
    expect(gapMs).toBeLessThan(500);
    await peer.envelope('slash_commands', kitchen());
    await until(() => replies().length === 1);
    const measuredS = await withoutSocketS();
    expect(measuredS).toBeGreaterThan(0);
    expect(measuredS).toBeLessThan(0.5);
    expect(running.log.join('')).toContain('the socket is open again');
  });

  test('before an event was acknowledged: sent again by Slack, it is answered once', async () => {
    const { peer } = running;
    const body = eventBody(directMessage('40 oat bars'));
    void peer.envelope('events_api', body);
    await until(() => running.peer.calls.some(({ method }) => method === 'users.info'));
    peer.cut();
    await until(() => peer.sockets() === 1 && opened().length === 1);
    await peer.envelope('events_api', body, { retry_attempt: 1, retry_reason: 'timeout' });
    await peer.envelope('events_api', body, { retry_attempt: 2, retry_reason: 'timeout' });
    await until(() => replies().length >= 1);
    await pause(200);
    expect(replies()).toHaveLength(1);
  });

  test('without a word: noticed within seconds, and replaced', async () => {
    const { peer } = running;
    // The first ping has to have been answered before its absence can be told.
    await pause(2_500);
    const fromMs = performance.now();
    peer.deafen();
    await until(() => opened().length === 1, 15_000);
    expect(performance.now() - fromMs).toBeLessThan(8_000);
    await until(() => peer.sockets() >= 2);
    await peer.envelope('slash_commands', kitchen());
    await until(() => replies().length === 1);
  });

  test('while Slack gives no other: not ready, and told; then ready again by itself', async () => {
    const { peer } = running;
    expect(await page('/readyz')).toEqual({ status: 200, text: '{"serving":true,"socket":true}\n' });
    // One that would end the library's own attempts, and one that would end the process.
    peer.fail.set('apps.connections.open', 'invalid_auth');
    peer.cut();
    await until(async () => (await page('/readyz')).status === 503);
    expect((await page('/readyz')).text).toBe('{"serving":true,"socket":false}\n');
    expect((await page('/healthz')).status).toBe(200);
    await until(() => opened().length >= 3);
    expect(running.log.join('')).toContain('"code":"invalid_auth"');
    peer.fail.clear();
    await until(async () => (await page('/readyz')).status === 200);
    await peer.envelope('slash_commands', kitchen());
    await until(() => replies().length === 1);
    expect(await withoutSocketS()).toBeGreaterThan(0.2);
  });
});
