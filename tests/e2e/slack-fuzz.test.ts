import fc from 'fast-check';
import { afterEach, describe, expect, test } from 'vitest';
import { FORM_IDS, type FormId } from '../../src/chat/forms/form.ts';
import { faultsOf } from '../slack/message-checks.ts';
import { command } from '../slack/payloads.ts';
import { viewFaults } from '../slack/view-checks.ts';
import {
  commands,
  drawn,
  events,
  fields,
  garbage,
  presses,
  shortcuts,
  submissions,
} from './fuzz-payloads.ts';
import { screensOf, type View } from './screens.ts';
import { asEvent, asForm, asPress, signedRequest } from './signed.ts';
import { type PeerCall, pause } from './slack-peer.ts';
import { type Mode, startWhole, type WholeService } from './whole-service.ts';

/** Payloads to each way in; `FUZZED` of another number is for a quick look or a long night. */
const RUNS = Number(process.env.FUZZED) || 300;
const AT_ONCE = 40;
const LONG_MS = 3_600_000;

let whole: WholeService;
afterEach(() => whole.stop());

/** With the database behind it and every form open once. */
async function begin(mode: Mode): Promise<ReadonlyMap<FormId, View>> {
  whole = await startWhole(mode);
  const screens = screensOf(whole);
  await screens.says('made 40 oat bars');
  const views = new Map<FormId, View>();
  for (const id of FORM_IDS) views.set(id, await screens.opened(id));
  whole.forget();
  return views;
}

/** Nothing that went to Slack pages anybody or breaks its rules. */
function expectHarmless(calls: readonly PeerCall[]): void {
  const shown = calls.filter(({ method }) => /^(?:respond|chat\.)/.test(method));
  expect(shown.length).toBeGreaterThan(0);
  for (const { body } of shown) {
    expect(faultsOf(body as never)).toEqual([]);
    expect(String(body.text)).not.toMatch(/<[!@#]/);
  }
  for (const { method, body } of calls)
    if (method.startsWith('views.')) expect(viewFaults(body.view as View)).toEqual([]);
}

/** What a form says to a submission: what to mend beside fields it has, or a view Slack takes. */
function expectFormAnswer(text: string, view: unknown): void {
  if (text === '') return;
  const answer = JSON.parse(text) as { errors?: Record<string, string>; view?: View };
  if (answer.view) expect(viewFaults(answer.view)).toEqual([]);
  const blocks = (view as { blocks?: { block_id?: string }[] } | undefined)?.blocks;
  if (!answer.errors || !Array.isArray(blocks)) return;
  for (const [field, fault] of Object.entries(answer.errors)) {
    expect(blocks.map((block) => block?.block_id)).toContain(field);
    expect(fault).not.toMatch(/<[!@#]/);
  }
}

describe('whatever is sent, with a database behind', () => {
  test(
    'over HTTP: never a crash, never a 5xx, nobody paged, nothing unexpected',
    async () => {
      const views = await begin('http');
      const { peer, url } = whole;
      const responseUrl = { response_url: peer.responseUrl };
      const requests: readonly (() => readonly [RequestInit, unknown?])[] = [
        ...drawn(commands, RUNS).map(
          (payload) => () => [asForm(fields({ ...payload, ...responseUrl }))] as const,
        ),
        ...drawn(events, RUNS).map((payload) => () => [asEvent(payload)] as const),
        ...drawn(presses, RUNS).map((payload) => () => [asPress({ ...payload, ...responseUrl })] as const),
        ...drawn(shortcuts, RUNS).map((payload) => () => [asPress(payload)] as const),
        ...drawn(submissions(views), RUNS).map(
          (payload) => () => [asPress(payload), (payload as { view?: unknown }).view] as const,
        ),
        ...drawn(garbage, RUNS).map((body) => () => [signedRequest(body)] as const),
      ];
      const statuses = new Map<number, number>();
      for (let at = 0; at < requests.length; at += AT_ONCE) {
        whole.clock.now = Date.now();
        await Promise.all(
          requests.slice(at, at + AT_ONCE).map(async (made) => {
            const [request, view] = made();
            const response = await fetch(`${url}/slack/events`, request);
            const text = await response.text();
            statuses.set(response.status, (statuses.get(response.status) ?? 0) + 1);
            if (response.status === 200 && view !== undefined) expectFormAnswer(text, view);
          }),
        );
      }
      expect([...statuses.keys()].filter((status) => status >= 500)).toEqual([]);
      expect(statuses.get(200)).toBeGreaterThan(RUNS);
      expect((await fetch(`${url}/healthz`)).status).toBe(200);
      await peer.answers(1);
      expectHarmless(peer.calls);
      expect(whole.log.filter((line) => /an answer failed|a form failed|went wrong/.test(line))).toEqual([]);
    },
    LONG_MS,
  );

  test(
    'over Socket Mode: never a crash, nobody paged, nothing unexpected',
    async () => {
      const views = await begin('socket');
      const { peer, url } = whole;
      const sent = [
        ...drawn(commands, RUNS).map((payload) => ['slash_commands', payload] as const),
        ...drawn(events, RUNS).map((payload) => ['events_api', payload] as const),
        ...drawn(presses, RUNS).map((payload) => ['interactive', payload] as const),
        ...drawn(shortcuts, RUNS).map((payload) => ['interactive', payload] as const),
        ...drawn(submissions(views), RUNS).map((payload) => ['interactive', payload] as const),
        ...drawn(fc.object({ maxDepth: 2 }), RUNS).map((payload) => ['events_api', payload] as const),
      ];
      for (const [at, [type, payload]] of sent.entries()) {
        void peer.envelope(type, { ...payload, response_url: peer.responseUrl });
        if (at % AT_ONCE === 0) await pause(5);
      }
      // Still alive, and still answering behind all of that.
      await peer.envelope('slash_commands', command('help', { response_url: peer.responseUrl }));
      expect((await fetch(`${url}/healthz`)).status).toBe(200);
      await peer.answers(1);
      expectHarmless(peer.calls);
      expect(whole.log.filter((line) => /an answer failed|a form failed|went wrong/.test(line))).toEqual([]);
    },
    LONG_MS,
  );
});
