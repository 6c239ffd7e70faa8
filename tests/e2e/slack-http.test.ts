import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { faultsOf } from '../slack/message-checks.ts';
import { command, directMessage, eventBody, mention, press, STAFF } from '../slack/payloads.ts';
import { type Running, startService } from './service.ts';
import { asEvent, asForm, asPress, signedRequest } from './signed.ts';

const PRIVATE = 'can I eat the cherry bars';
let running: Running;
beforeAll(async () => {
  running = await startService('http');
});
afterAll(() => running.stop());
beforeEach(() => {
  running.peer.calls.length = 0;
  running.peer.fail.clear();
});

const post = async (request: RequestInit): Promise<number> => {
  const response = await fetch(`${running.url}/slack/events`, request);
  await response.text();
  return response.status;
};
const kitchen = (text: string, more: object = {}) =>
  command(text, { response_url: running.peer.responseUrl, ...more }) as Record<string, string>;
const answers = (count: number) => running.peer.answers(count);

describe('over HTTP', () => {
  test('staff ask /kitchen for 40 oat bars and the channel sees the answer', async () => {
    expect(await post(asForm(kitchen('40 oat bars', { user_id: STAFF })))).toBe(200);
    const [answer, ...others] = await answers(1);
    expect(others).toEqual([]);
    expect(answer).toMatchObject({ method: 'respond', body: { response_type: 'in_channel' } });
    expect(answer?.body.text).toMatch(/^40\b/);
    expect(answer?.body.text).toContain('oats');
    expect(faultsOf(answer?.body as never)).toEqual([]);
  });

  test('a form whose content type names its charset is read as well', async () => {
    const contentType = 'application/x-www-form-urlencoded; charset=utf-8';
    expect(await post(asForm(kitchen('40 oat bars'), { contentType }))).toBe(200);
    expect(await answers(1)).toHaveLength(1);
  });

  test('a mention in a thread is answered in the thread', async () => {
    expect(await post(asEvent(eventBody(mention('40 oat bars', { thread_ts: '1.1' }))))).toBe(200);
    expect(await answers(1)).toMatchObject([{ method: 'chat.postMessage', body: { thread_ts: '1.1' } }]);
  });

  test('a question about an allergy in a channel is answered to the asker alone', async () => {
    expect(await post(asEvent(eventBody(mention(PRIVATE))))).toBe(200);
    expect(await answers(1)).toMatchObject([{ method: 'chat.postEphemeral' }]);
  });

  test('a direct message is answered', async () => {
    expect(await post(asEvent(eventBody(directMessage(PRIVATE))))).toBe(200);
    expect(await answers(1)).toMatchObject([{ method: 'chat.postMessage', body: { channel: 'D0ATHLETE' } }]);
  });

  test('a button of an answer, pressed, says its words', async () => {
    await post(asForm(kitchen('40 oat bars')));
    const [answer] = await answers(1);
    const blocks = (answer?.body.blocks ?? []) as { elements: { action_id: string; value: string }[] }[];
    const [button] = blocks.at(-1)?.elements ?? [];
    const payload = press(button?.value ?? 'no button', { response_url: running.peer.responseUrl });
    expect(await post(asPress({ ...payload, actions: [{ ...payload.actions[0], ...button }] }))).toBe(200);
    const [, second] = await answers(2);
    expect(second?.body.text).not.toBe(answer?.body.text);
    expect(second?.body.text).not.toContain('did not understand');
  });

  test('every call carries the token of the bot', async () => {
    await post(asEvent(eventBody(directMessage('40 oat bars'))));
    await answers(1);
    expect(running.peer.calls.map((call) => call.token)).toEqual(running.peer.calls.map(() => 'xoxb-test'));
  });

  test('Slack verifies the address', async () => {
    const response = await fetch(
      `${running.url}/slack/events`,
      asEvent({ type: 'url_verification', challenge: 'c1' }),
    );
    expect(await response.json()).toEqual({ challenge: 'c1' });
  });

  test.each([
    ['a wrong signature', () => asForm(kitchen('40 oat bars'), { secret: 'guessed' }), 401],
    ['a timestamp of six minutes ago', () => asForm(kitchen('40 oat bars'), { shiftS: -360 }), 401],
    ['a timestamp in six minutes', () => asForm(kitchen('40 oat bars'), { shiftS: 360 }), 401],
    [
      'a timestamp that is no number',
      () => asForm(kitchen('x'), { headers: { 'x-slack-request-timestamp': 'now' } }),
      401,
    ],
    [
      'no signature',
      () => ({ method: 'POST', body: JSON.stringify(eventBody(mention('40 oat bars'))) }),
      401,
    ],
    ['a body that is no object', () => signedRequest('null'), 400],
    ['a list', () => signedRequest('[]'), 400],
    ['an event that is no object', () => signedRequest('{"event":null}'), 400],
    ['half a payload', () => asForm({ payload: '{"type":' }), 400],
    ['a press without a person', () => asPress({ type: 'block_actions', actions: [] }), 400],
    ['a body of two megabytes', () => signedRequest('x'.repeat(2 * 1024 * 1024)), 413],
  ])('refuses %s', async (_, request, status) => {
    expect(await post(request())).toBe(status);
    expect(await answers(0)).toEqual([]);
  });

  test('refuses a workspace that has not installed the app', async () => {
    const foreign = { team_id: 'T0OTHER', team: { id: 'T0OTHER', domain: 'other' } };
    const payload = { ...press('macros oat bars'), ...foreign, user: { id: STAFF, team_id: 'T0OTHER' } };
    const statuses = await Promise.all([
      post(asForm(kitchen('40 oat bars', foreign))),
      post(asPress(payload)),
      post(asEvent(eventBody(mention('40 oat bars'), { ...foreign, authorizations: undefined }))),
    ]);
    // Acknowledged, or Slack would send it again; and nothing else.
    expect(statuses).toEqual([200, 200, 200]);
    expect(await answers(0)).toEqual([]);
    expect(running.peer.calls).toEqual([]);
  });

  test('tells a stranger of a shared channel recipe facts, and nothing of the kitchen', async () => {
    running.peer.user = { team_id: 'T0OTHER', is_stranger: true };
    const stranger = 'U0STRANGER';
    const asked = (text: string) => eventBody(mention(text, { user: stranger, user_team: 'T0OTHER' }));
    await post(asEvent(asked('stock')));
    await post(asForm(kitchen('stock', { user_id: stranger })));
    for (const { body } of await answers(2)) expect(body.text).toContain('members of this team');
    running.peer.calls.length = 0;
    await post(asEvent(asked('macros oat bars')));
    expect((await answers(1))[0]?.body.text).toContain('protein');
    running.peer.user = {};
  });

  test.each([
    ['replayed', {}],
    ['sent again by Slack', { 'x-slack-retry-num': '1', 'x-slack-retry-reason': 'http_timeout' }],
  ])('an event is answered once when it is %s', async (_, headers) => {
    const body = eventBody(mention('40 oat bars'));
    const first = asEvent(body);
    expect(await post(first)).toBe(200);
    expect(await post({ ...first, headers: { ...first.headers, ...headers } })).toBe(200);
    expect(await answers(1)).toHaveLength(1);
  });

  test('a command is answered once when it is replayed', async () => {
    const request = asForm(kitchen('40 oat bars'));
    expect([await post(request), await post(request)]).toEqual([200, 200]);
    expect(await answers(1)).toHaveLength(1);
  });

  test('its own messages and edits are not answered', async () => {
    await post(asEvent(eventBody(directMessage('40 oat bars', { user: 'U0BOT', bot_id: 'B0BOT' }))));
    await post(asEvent(eventBody(directMessage('40 oat bars', { subtype: 'message_changed' }))));
    expect(await answers(0)).toEqual([]);
  });

  test('text that would page a channel pages nobody', async () => {
    await post(asEvent(eventBody(mention('&lt;!channel&gt; 40 oat bars'))));
    const [answer] = await answers(1);
    expect(faultsOf(answer?.body as never)).toEqual([]);
    expect(JSON.stringify(answer?.body)).not.toContain('<!channel>');
  });

  test('an answer Slack takes no more reaches the asker another way', async () => {
    running.peer.fail.set('respond', 404).set('chat.postEphemeral', 'not_in_channel');
    await post(asForm(kitchen('40 oat bars')));
    expect((await answers(3)).map((call) => call.method)).toEqual([
      'respond',
      'chat.postEphemeral',
      'chat.postMessage',
    ]);
  });

  test('says that it is well, and nothing else to strangers', async () => {
    expect((await fetch(`${running.url}/healthz`)).status).toBe(200);
    expect((await fetch(`${running.url}/`)).status).toBe(404);
    expect((await fetch(`${running.url}//`)).status).toBe(404);
  });

  test('the log holds no words, names or secrets', async () => {
    await post(asForm(kitchen(PRIVATE)));
    await answers(1);
    const text = running.log.join('');
    expect(text).toContain('answered');
    expect(text).not.toMatch(/cherry|somebody|U0ATHLETE|xoxb|xapp|a secret/);
  });
});

describe('a conversation in a thread', () => {
  test('a follow-up leans on what the same person asked before', async () => {
    const thread = { thread_ts: '77.1' };
    await post(asEvent(eventBody(mention('macros oat bars', { user: STAFF, ...thread }))));
    await answers(1);
    await post(asEvent(eventBody(mention('cut into 8', { user: STAFF, ...thread }))));
    const [first, second] = await answers(2);
    expect(second?.body.thread_ts).toBe('77.1');
    expect(second?.body.text).toContain('Oat bars');
    expect(second?.body.text).not.toBe(first?.body.text);
  });

  test('an emergency is answered to anybody, guests too', async () => {
    running.peer.user = { is_restricted: true };
    await post(asForm(kitchen('she ate a bar and cannot breathe', { user_id: 'U0GUEST' })));
    const [answer] = await answers(1);
    expect(answer?.body.text).toMatch(/^Call 911/);
    running.peer.user = {};
  });
});
