import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { freshPlace, type Place } from '../helpers/database.ts';
import { command } from '../slack/payloads.ts';
import { type Program, startProgram } from './program.ts';
import { asForm } from './signed.ts';
import { pause, type SlackPeer, startSlackPeer } from './slack-peer.ts';

/** The longest a stop may take, whatever hangs. */
const LONGEST_MS = 10_000;

let peer: SlackPeer;
let place: Place;
let program: Program | undefined;
beforeEach(async () => {
  peer = await startSlackPeer();
  place = await freshPlace();
});
afterEach(async () => {
  program?.child.kill('SIGKILL');
  await program?.ended;
  await peer.close();
  await place.remove();
});

async function start(environment: Record<string, string> = {}): Promise<Program> {
  const isPostgres = place.url.startsWith('postgres');
  program = isPostgres
    ? await startProgram(peer, [], { DATABASE_URL: place.url, ...environment })
    : await startProgram(peer, ['--db', place.url], environment);
  return program;
}
const asked = async (url: string, text: string): Promise<number> => {
  const fields = command(text, { response_url: peer.responseUrl }) as Record<string, string>;
  return (await fetch(`${url}/slack/events`, asForm(fields))).status;
};
async function stopped({ child, ended }: Program, signal: NodeJS.Signals = 'SIGTERM') {
  const fromMs = performance.now();
  child.kill(signal);
  const code = await ended;
  return { code, ms: performance.now() - fromMs };
}
const sawCall = async (method: string): Promise<void> => {
  while (!peer.calls.some((call) => call.method === method)) await pause(10);
};

describe('a service asked to stop', () => {
  test.each(['SIGTERM', 'SIGINT'] as const)(
    '%s with nothing in hand: ends at once, code 0',
    async (signal) => {
      const running = await start();
      await asked(running.url, '40 oat bars');
      await sawCall('respond');
      const { code, ms } = await stopped(running, signal);
      expect(code).toBe(0);
      expect(ms).toBeLessThan(3_000);
    },
  );

  test('over Socket Mode too', async () => {
    const { code, ms } = await stopped(await start({ SLACK_APP_TOKEN: 'xapp-test' }));
    expect(code).toBe(0);
    expect(ms).toBeLessThan(3_000);
  });

  test('with an answer that hangs: ends within ten seconds, says what is left, code 3', async () => {
    const running = await start();
    for (const method of ['respond', 'chat.postEphemeral', 'chat.postMessage']) peer.stalls.add(method);
    expect(await asked(running.url, '40 oat bars')).toBe(200);
    await sawCall('respond');
    const { code, ms } = await stopped(running);
    expect(ms).toBeLessThan(LONGEST_MS);
    expect(code).toBe(3);
    expect(running.log().at(-1)).toMatchObject({ unfinished: { answers: 1 } });
    expect(String(running.log().at(-1)?.msg)).toMatch(/^stopped /);
  });

  test('asked twice: ends at once, and says what is left', async () => {
    const running = await start();
    peer.stalls.add('respond');
    await asked(running.url, '40 oat bars');
    await sawCall('respond');
    running.child.kill('SIGTERM');
    await pause(300);
    const { code, ms } = await stopped(running);
    expect(ms).toBeLessThan(2_000);
    expect(code).toBe(3);
    expect(running.log().at(-1)).toMatchObject({
      msg: 'stopped at once: asked twice',
      unfinished: { answers: 1 },
    });
  });
});
