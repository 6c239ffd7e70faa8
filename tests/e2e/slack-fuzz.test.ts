import fc from 'fast-check';
import { afterAll, describe, expect, test } from 'vitest';
import { faultsOf } from '../slack/message-checks.ts';
import { command, directMessage, eventBody, mention, press, STAFF } from '../slack/payloads.ts';
import { startService } from './service.ts';
import { asEvent, asForm, asPress, signedRequest } from './signed.ts';

/** Payloads to each way in; `FUZZED` of another number is for a quick look or a long night. */
const RUNS = Number(process.env.FUZZED) || 500;
const AT_ONCE = 20;
const PAGING = ['<!channel>', '<!here>', '<!everyone>', '<@U0STAFF>', '<!subteam^S0KITCHEN>', '<http://x|y>'];

const words = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc
    .tuple(
      fc.constantFrom(
        '40 oat bars',
        'macros oat bars',
        'made 3 ',
        'nut free ',
        'swap milk ',
        'help ',
        'stock ',
      ),
      fc.constantFrom(...PAGING, '&lt;!channel&gt;', '\u202e', '💥'.repeat(40), ''),
    )
    .map((parts) => parts.join(' ')),
);
const junk = fc.oneof(
  fc.constant(undefined),
  fc.constant(null),
  fc.integer(),
  fc.string({ maxLength: 20 }),
  fc.array(fc.string({ maxLength: 5 }), { maxLength: 3 }),
  fc.object({ maxDepth: 2, maxKeys: 3 }),
);

/** A payload of Slack's shape with some fields replaced by anything. */
const damaged = (whole: fc.Arbitrary<object>): fc.Arbitrary<object> =>
  fc.tuple(whole, fc.array(fc.tuple(fc.nat(30), junk), { maxLength: 3 })).map(([payload, damages]) => {
    const copy: Record<string, unknown> = structuredClone(payload) as Record<string, unknown>;
    for (const [at, value] of damages) {
      const names = Object.keys(copy);
      const name = names[at % names.length];
      if (name) copy[name] = value;
    }
    return copy;
  });
const commands = damaged(words.map((text) => command(text, { user_id: STAFF })));
const events = damaged(
  fc
    .tuple(
      damaged(words.map((text) => mention(text))),
      damaged(words.map((text) => directMessage(text))),
      fc.boolean(),
    )
    .map(([one, other, first]) => eventBody(first ? one : other)),
);
const presses = damaged(words.map((text) => press(text)));
const fields = (payload: object): Record<string, string> =>
  Object.fromEntries(
    Object.entries(payload).map(([name, value]) => [
      name,
      typeof value === 'string' ? value : (JSON.stringify(value) ?? ''),
    ]),
  );

const SEED = 20_261_125;
const drawn = <T>(arbitrary: fc.Arbitrary<T>, count: number): T[] =>
  fc.sample(arbitrary, { seed: SEED, numRuns: count });

async function inTurns<T>(all: readonly T[], send: (one: T) => Promise<void>): Promise<void> {
  for (let at = 0; at < all.length; at += AT_ONCE) await Promise.all(all.slice(at, at + AT_ONCE).map(send));
}

/** Nothing that went to Slack pages anybody or breaks its rules. */
function expectHarmless(calls: readonly { method: string; body: Record<string, unknown> }[]): void {
  const shown = calls.filter(({ method }) => /^(respond|chat\.)/.test(method));
  expect(shown.length).toBeGreaterThan(0);
  for (const { body } of shown) {
    expect(faultsOf(body as never)).toEqual([]);
    expect(String(body.text)).not.toMatch(/<[!@#]/);
  }
}

describe('whatever is sent', () => {
  let stop = async (): Promise<void> => {};
  afterAll(() => stop());

  test('over HTTP: never a crash, never a 5xx, nobody paged', async () => {
    const { peer, url, stop: close } = await startService('http');
    stop = close;
    const responseUrl = { response_url: peer.responseUrl };
    const requests: RequestInit[] = [
      ...drawn(commands, RUNS).map((payload) => asForm(fields({ ...payload, ...responseUrl }))),
      ...drawn(events, RUNS).map((payload) => asEvent(payload)),
      ...drawn(presses, RUNS).map((payload) => asPress({ ...payload, ...responseUrl })),
      ...drawn(fc.string({ unit: 'binary', maxLength: 200 }), RUNS).map((body) => signedRequest(body)),
    ];
    const statuses = new Map<number, number>();
    await inTurns(requests, async (request) => {
      const response = await fetch(`${url}/slack/events`, request);
      await response.text();
      statuses.set(response.status, (statuses.get(response.status) ?? 0) + 1);
    });
    expect([...statuses.keys()].filter((status) => status >= 500)).toEqual([]);
    expect((await fetch(`${url}/healthz`)).status).toBe(200);
    await peer.answers(1);
    expectHarmless(peer.calls);
  }, 1_800_000);

  test('over Socket Mode: never a crash, nobody paged', async () => {
    const { peer, url, stop: close } = await startService('socket');
    const sent = [
      ...drawn(commands, RUNS).map((payload) => ['slash_commands', payload] as const),
      ...drawn(events, RUNS).map((payload) => ['events_api', payload] as const),
      ...drawn(presses, RUNS).map((payload) => ['interactive', payload] as const),
      ...drawn(fc.object({ maxDepth: 2 }), RUNS).map((payload) => ['events_api', payload] as const),
    ];
    for (const [type, payload] of sent) {
      void peer.envelope(type, { ...payload, response_url: peer.responseUrl });
    }
    // Still alive, and still answering behind all of that.
    await peer.envelope('slash_commands', command('help', { response_url: peer.responseUrl }));
    expect((await fetch(`${url}/healthz`)).status).toBe(200);
    await peer.answers(1);
    expectHarmless(peer.calls);
    await close();
  }, 1_800_000);
});
