import { WebClient } from '@slack/web-api';
import nock from 'nock';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { clientOptions } from '../../src/slack/client.ts';
import { deliver } from '../../src/slack/deliver.ts';
import { createLog } from '../../src/slack/log.ts';
import { withinAllowance } from '../../src/slack/response-url.ts';
import { faultsOf } from './message-checks.ts';
import {
  ATHLETE,
  command,
  directMessage,
  eventBody,
  mention,
  press,
  RESPONSE_URL,
  STAFF,
} from './payloads.ts';
import { smallChat } from './small-chat.ts';
import { API, type Call, fakeSlack, sent, wire } from './wire.ts';

beforeEach(() => nock.disableNetConnect());
afterEach(() => {
  nock.cleanAll();
  nock.enableNetConnect();
});

const PRIVATE = 'can I eat the cherry bars';
/** What Slack got for one payload, and what the chat was asked. */
async function outcomeOf(payload: object, fail: Record<string, string | number> = {}) {
  const calls = fakeSlack(fail);
  const chat = smallChat();
  const wired = await wire(chat);
  await wired.receiver.send(payload);
  return { calls: sent(calls), asked: chat.asked, ...wired };
}
const ways = (calls: readonly Call[]) =>
  calls.map(({ method, body }) => [method, body.response_type ?? body.channel]);

describe('where an answer goes', () => {
  test('a command of staff about scaling is shown to the channel', async () => {
    const { calls } = await outcomeOf(command('40 oat bars', { user_id: STAFF }));
    expect(ways(calls)).toEqual([['respond', 'in_channel']]);
  });

  test.each([
    ['an athlete', command('40 oat bars')],
    ['staff about anything else', command('macros oat bars', { user_id: STAFF })],
    ['staff about an allergy', command(PRIVATE, { user_id: STAFF })],
    ['anybody who was not understood', command('blah', { user_id: STAFF })],
  ])('a command of %s is answered to the asker alone', async (_, payload) => {
    const { calls, asked } = await outcomeOf(payload);
    expect(ways(calls)).toEqual([['respond', 'ephemeral']]);
    expect(asked[0]?.isPrivate).toBe(true);
  });

  test('a mention is answered in its thread, and starts one where there is none', async () => {
    const event = mention('40 oat bars');
    const { calls, asked } = await outcomeOf(eventBody(event));
    expect(calls[0]).toMatchObject({
      method: 'chat.postMessage',
      body: { channel: 'C0KITCHEN', thread_ts: event.ts },
    });
    expect(calls[0]?.body).toMatchObject({ unfurl_links: 'false', unfurl_media: 'false', parse: 'none' });
    expect(asked[0]).toMatchObject({ text: '40 oat bars', isPrivate: false });
    const inThread = await outcomeOf(eventBody(mention('40 oat bars', { thread_ts: '1.1' })));
    expect(inThread.calls[0]?.body.thread_ts).toBe('1.1');
  });

  test('a mention about an allergy is answered to the asker alone, in the thread', async () => {
    const { calls } = await outcomeOf(eventBody(mention(PRIVATE, { thread_ts: '1.1' })));
    expect(calls).toHaveLength(1);
    expect(calls[0]).toMatchObject({
      method: 'chat.postEphemeral',
      body: { channel: 'C0KITCHEN', user: ATHLETE, thread_ts: '1.1' },
    });
  });

  test('macros that staff ask for in a channel are posted there; the chat is told that others read along', async () => {
    const { calls, asked } = await outcomeOf(eventBody(mention('macros oat bars', { user: STAFF })));
    expect(ways(calls)).toEqual([['chat.postMessage', 'C0KITCHEN']]);
    expect(asked[0]?.isPrivate).toBe(false);
  });

  test('a direct message is answered where it was written, as a private conversation', async () => {
    const { calls, asked } = await outcomeOf(eventBody(directMessage(PRIVATE)));
    expect(ways(calls)).toEqual([['chat.postMessage', 'D0ATHLETE']]);
    expect(asked[0]?.isPrivate).toBe(true);
  });

  test('a press says the words of the button for the one who pressed', async () => {
    const { calls, asked } = await outcomeOf(press('macros oat bars'));
    expect(asked[0]).toMatchObject({ text: 'macros oat bars', asker: { who: ATHLETE, role: 'athlete' } });
    expect(ways(calls)).toEqual([['respond', 'ephemeral']]);
  });

  test('a press in a thread is answered in that thread, in a direct message in that direct message', async () => {
    const thread = await outcomeOf(press('macros oat bars', {}, 'next|channel|1.1'));
    expect(thread.calls[0]).toMatchObject({ method: 'chat.postMessage', body: { thread_ts: '1.1' } });
    const direct = await outcomeOf(press(PRIVATE, { channel: { id: 'D0ATHLETE' } }, 'next|dm|'));
    expect(ways(direct.calls)).toEqual([['chat.postMessage', 'D0ATHLETE']]);
  });

  test('follow-ups lean on one person in one thread', async () => {
    const keys = async (payload: object) => (await outcomeOf(payload)).asked[0]?.conversation;
    const thread = { thread_ts: '1.1' };
    const first = await keys(eventBody(mention('40 oat bars', thread)));
    expect(await keys(eventBody(mention('macros oat bars', thread)))).toBe(first);
    expect(await keys(press('macros oat bars', {}, 'next|channel|1.1'))).toBe(first);
    expect(await keys(eventBody(mention('40 oat bars', { thread_ts: '2.2' })))).not.toBe(first);
    expect(await keys(eventBody(mention('40 oat bars', { ...thread, user: STAFF })))).not.toBe(first);
  });

  test('text that would page a channel pages nobody', async () => {
    const { calls } = await outcomeOf(eventBody(mention('&lt;!channel&gt; 40 oat bars')));
    expect(faultsOf(calls[0]?.body as never)).toEqual([]);
    expect(calls[0]?.body.text).toContain('&lt;!channel&gt; 40 oat bars');
  });
});

describe('when Slack refuses', () => {
  test('an expired response url is followed by an ephemeral message, then a direct message', async () => {
    const { calls } = await outcomeOf(command('macros oat bars'), {
      respond: 404,
      'chat.postEphemeral': 'not_in_channel',
    });
    expect(ways(calls)).toEqual([
      ['respond', 'ephemeral'],
      ['chat.postEphemeral', 'C0KITCHEN'],
      ['chat.postMessage', ATHLETE],
    ]);
  });

  test('an answer for the channel that cannot be posted reaches the asker, never more people', async () => {
    const { calls } = await outcomeOf(eventBody(mention('40 oat bars')), {
      'chat.postMessage': 'is_archived',
    });
    expect(ways(calls).slice(0, 2)).toEqual([
      ['chat.postMessage', 'C0KITCHEN'],
      ['chat.postEphemeral', 'C0KITCHEN'],
    ]);
  });

  test('a private answer never becomes a public one', async () => {
    const refused = {
      respond: 500,
      'chat.postEphemeral': 'channel_not_found',
      'chat.postMessage': 'fatal_error',
    };
    const { calls, log } = await outcomeOf(command(PRIVATE, { user_id: STAFF }), refused);
    expect(ways(calls)).toEqual([
      ['respond', 'ephemeral'],
      ['chat.postEphemeral', 'C0KITCHEN'],
      ['chat.postMessage', STAFF],
    ]);
    expect(log.join('')).toContain('a reply could not be delivered');
  });

  test('a rate limit is waited for as long as Slack asks, once, then the next way is tried', async () => {
    const { calls, waits } = await outcomeOf(eventBody(mention('40 oat bars')), {
      'chat.postMessage': 'ratelimited',
    });
    expect(waits).toEqual([1000]);
    expect(calls.map((call) => call.method)).toEqual([
      'chat.postMessage',
      'chat.postMessage',
      'chat.postEphemeral',
    ]);
  });

  test('a failure of ours is told to the asker with an id, and logged without their words', async () => {
    const { calls, log } = await outcomeOf(command('break'));
    const id = /\(([0-9a-f]{8})\)/.exec(String(calls[0]?.body.text))?.[1];
    expect(id).toBeDefined();
    expect(log.join('')).toContain(id);
    expect(log.join('')).not.toMatch(/peanut|WP-07/);
  });
});

describe('the log', () => {
  test('holds no words and no people, whatever was asked', async () => {
    const { log } = await outcomeOf(eventBody(directMessage(PRIVATE)), { 'chat.postMessage': 'fatal_error' });
    expect(log.length).toBeGreaterThan(0);
    expect(log.join('')).not.toMatch(/cherry|U0ATHLETE|somebody|xoxb/);
  });
});

describe('a response url', () => {
  const place = { workspace: 'T0HERONS', channel: 'C0KITCHEN', user: ATHLETE, isOwnDirectMessage: false };
  const message = { text: 'x', blocks: [] };
  const QUIET = createLog('silent');

  async function delivered(times: number, fail: Record<string, string> = {}, minutesLater = 0) {
    const calls = fakeSlack(fail);
    const clock = { now: 0, nowMs: () => clock.now };
    const client = new WebClient('xoxb-test', clientOptions(API));
    const post = (body: unknown) => fetch(RESPONSE_URL, { method: 'POST', body: JSON.stringify(body) });
    const respond = withinAllowance(post as never, clock);
    clock.now += minutesLater * 60_000;
    for (let at = 0; at < times; at += 1) {
      await deliver({ message, isPublic: false }, { place, client, respond }, QUIET, async () => {});
    }
    return ways(calls);
  }

  test('is used five times, then the asker is reached another way', async () => {
    const all = await delivered(7);
    expect(all.map(([method]) => method)).toEqual([
      ...Array(5).fill('respond'),
      'chat.postEphemeral',
      'chat.postEphemeral',
    ]);
  });

  test('and directly where the bot is not in the channel', async () => {
    const all = await delivered(6, { 'chat.postEphemeral': 'not_in_channel' });
    expect(all.slice(5)).toEqual([
      ['chat.postEphemeral', 'C0KITCHEN'],
      ['chat.postMessage', ATHLETE],
    ]);
  });

  test.each([
    [29, 'respond'],
    [30, 'chat.postEphemeral'],
  ])('%s minutes old: %s', async (minutes, method) => {
    expect(await delivered(1, {}, minutes)).toEqual([
      [method, method === 'respond' ? undefined : 'C0KITCHEN'],
    ]);
  });

  test('of a command whose answer took too long is not tried any more', async () => {
    const calls = fakeSlack();
    const chat = smallChat();
    const wired = await wire({
      ...chat,
      ask: (request) => {
        wired.clock.now += 31 * 60_000;
        return chat.ask(request);
      },
    });
    await wired.receiver.send(command('macros oat bars'));
    expect(ways(sent(calls))).toEqual([['chat.postEphemeral', 'C0KITCHEN']]);
  });
});
