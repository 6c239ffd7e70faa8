import nock from 'nock';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { DeliveryFailure } from '../../src/kitchen/reminders/messenger.ts';
import type { OutboxMessage, Reminder } from '../../src/kitchen/reminders/reminder.ts';
import { slackMessenger } from '../../src/slack/messenger.ts';

const messenger = slackMessenger({
  botToken: 'xoxb-1',
  apiUrl: 'http://slack.test/api/',
  channels: { kitchen: 'C1', dietitian: 'C2' },
  staff: async () => ['U1', 'U2'],
});
const DUE = Date.parse('2026-12-04T16:00:00Z');
const message: OutboxMessage = {
  id: 'm-1',
  workspace: 'T1',
  audience: 'dietitian',
  body: JSON.stringify({
    title: 'Prep now: 24 oat bars',
    sections: [],
    cautions: [],
    next: [{ label: 'Done', says: 'done R1' }],
    audience: 'channel',
    data: {},
  }),
  attempts: 1,
  maybeSent: false,
  reminder: { dueMs: DUE } as Reminder,
};
const fields = (body: unknown) => Object.fromEntries(new URLSearchParams(String(body)));
const api = () => nock('http://slack.test');
const failure = (work: Promise<unknown>) =>
  work.then(
    () => undefined,
    (error: DeliveryFailure) => error.details,
  );

// Files of one worker share nock: what another one left standing would answer here.
beforeEach(() => nock.cleanAll());
afterEach(() => expect(nock.isDone()).toBe(true));

describe('sending', () => {
  test('goes to the role’s channel, with the id in its metadata and the buttons’ words', async () => {
    let sent: Record<string, string> = {};
    api()
      .post('/api/chat.postMessage')
      .reply((_, body) => {
        sent = fields(body);
        return [200, { ok: true, ts: '17.5' }];
      });
    expect(await messenger.send(message)).toBe('C2 17.5');
    expect(sent.channel).toBe('C2');
    expect(JSON.parse(sent.metadata ?? '')).toEqual({
      event_type: 'batchbell_reminder',
      event_payload: { id: 'm-1' },
    });
    expect(sent.blocks).toContain('done R1');
  });

  test.each([
    ['token_revoked', { reason: 'token_revoked', outcome: 'refused' }],
    ['internal_error', { reason: 'internal_error', outcome: 'unanswered' }],
  ])('%s', async (error, details) => {
    api().post('/api/chat.postMessage').reply(200, { ok: false, error });
    expect(await failure(messenger.send(message))).toEqual(details);
  });

  test('goes where staff chose instead', async () => {
    api()
      .post('/api/chat.postMessage', /channel=C9/)
      .reply(200, { ok: true, channel: 'C9', ts: '17.6' });
    expect(await messenger.send({ ...message, place: 'C9' })).toBe('C9 17.6');
  });

  test('too many at once: it says how long to wait, and does not try by itself', async () => {
    api().post('/api/chat.postMessage').reply(429, '', { 'retry-after': '7' });
    expect(await failure(messenger.send(message))).toEqual({
      reason: 'ratelimited',
      outcome: 'not_sent',
      retryAfterMs: 7000,
    });
  });

  test('a broken connection and a broken server may have sent it', async () => {
    api().post('/api/chat.postMessage').replyWithError({ code: 'ECONNRESET', message: 'reset' });
    expect(await failure(messenger.send(message))).toMatchObject({ outcome: 'unanswered' });
    api().post('/api/chat.postMessage').reply(503, 'busy');
    expect(await failure(messenger.send(message))).toMatchObject({ outcome: 'unanswered' });
  });
});

describe('a channel that takes nothing any more', () => {
  const channelSays = (error: string) =>
    api()
      .post('/api/chat.postMessage', /channel=C2/)
      .reply(200, { ok: false, error });
  const memberSays = (member: string, answer: object, sent: Record<string, string>[] = []) =>
    api()
      .post('/api/chat.postMessage', new RegExp(`channel=${member}`))
      .reply((_, body) => {
        sent.push(fields(body));
        return [200, answer];
      });

  test.each([
    ['channel_not_found', 'deleted'],
    ['is_archived', 'archived'],
    ['not_in_channel', 'not in the channel'],
    ['restricted_action_read_only_channel', 'does not let me post'],
  ])('%s: every member of staff is told directly, with the reason', async (error, reason) => {
    const sent: Record<string, string>[] = [];
    channelSays(error);
    memberSays('U1', { ok: true, channel: 'D1', ts: '18.1' }, sent);
    memberSays('U2', { ok: true, channel: 'D2', ts: '18.2' }, sent);
    expect(await messenger.send(message)).toBe('D1 18.1, D2 18.2');
    for (const each of sent) {
      expect(each.text).toContain('Prep now: 24 oat bars');
      expect(each.text).toContain(reason);
      expect(each.metadata).toContain('m-1');
    }
  });

  test('nobody chose a channel: staff are told directly, and how to choose one', async () => {
    const sent: Record<string, string>[] = [];
    const homeless = slackMessenger({
      botToken: 'xoxb-1',
      apiUrl: 'http://slack.test/api/',
      channels: {},
      staff: async () => ['U1'],
    });
    memberSays('U1', { ok: true, channel: 'D1', ts: '18.1' }, sent);
    expect(await homeless.send(message)).toBe('D1 18.1');
    expect(sent[0]?.text).toContain('Choose one in the kitchen settings');
  });

  test('told to one is told, though another cannot be reached', async () => {
    channelSays('is_archived');
    memberSays('U1', { ok: false, error: 'user_disabled' });
    memberSays('U2', { ok: true, channel: 'D2', ts: '18.2' });
    expect(await messenger.send(message)).toBe('D2 18.2');
  });

  test('nobody can be told: the channel’s own reason is kept, and it is not tried for ever', async () => {
    channelSays('is_archived');
    memberSays('U1', { ok: false, error: 'user_disabled' });
    memberSays('U2', { ok: false, error: 'user_disabled' });
    expect(await failure(messenger.send(message))).toEqual({ reason: 'is_archived', outcome: 'refused' });
  });

  test('an answer that was lost leaves it open, and it is looked for in direct messages', async () => {
    channelSays('channel_not_found');
    memberSays('U1', { ok: false, error: 'internal_error' });
    memberSays('U2', { ok: false, error: 'user_disabled' });
    expect(await failure(messenger.send(message))).toMatchObject({ outcome: 'unanswered' });
    api()
      .post('/api/conversations.history', /channel=C2/)
      .reply(200, { ok: false, error: 'channel_not_found' });
    api()
      .post('/api/conversations.open', /users=U1/)
      .reply(200, { ok: true, channel: { id: 'D1' } });
    const ours = { ts: '18.1', metadata: { event_type: 'batchbell_reminder', event_payload: { id: 'm-1' } } };
    api()
      .post('/api/conversations.history', /channel=D1/)
      .reply(200, { ok: true, messages: [ours] });
    expect(await messenger.find(message)).toBe('D1 18.1');
  });
});

describe('looking', () => {
  const page = (messages: object[], next = '') => ({
    ok: true,
    messages,
    response_metadata: { next_cursor: next },
  });
  const ours = (id: string) => ({
    ts: `9.${id}`,
    metadata: { event_type: 'batchbell_reminder', event_payload: { id } },
  });

  test('reads page after page until it is there', async () => {
    const asked: Record<string, string>[] = [];
    api()
      .post('/api/conversations.history')
      .reply((_, body) => {
        asked.push(fields(body));
        return [200, page([{ ts: '1.1' }, ours('m-0')], 'next')];
      })
      .post('/api/conversations.history')
      .reply((_, body) => {
        asked.push(fields(body));
        return [200, page([ours('m-1')])];
      });
    expect(await messenger.find(message)).toBe('C2 9.m-1');
    expect(asked).toMatchObject([
      { channel: 'C2', include_all_metadata: 'true' },
      { channel: 'C2', cursor: 'next' },
    ]);
    expect(Number(asked[0]?.oldest)).toBeLessThan(DUE / 1000);
  });

  test('is not fooled by another app’s metadata', async () => {
    const foreign = { ts: '1.2', metadata: { event_type: 'task', event_payload: { id: 'm-1' } } };
    api()
      .post('/api/conversations.history')
      .reply(200, page([foreign]));
    expect(await messenger.find(message)).toBeUndefined();
  });

  test('that fails says so, rather than that nothing is there', async () => {
    api().post('/api/conversations.history').reply(200, { ok: false, error: 'missing_scope' });
    expect(await failure(messenger.find(message))).toEqual({ reason: 'missing_scope', outcome: 'refused' });
  });
});
