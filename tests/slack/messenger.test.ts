import nock from 'nock';
import { afterEach, describe, expect, test } from 'vitest';
import type { DeliveryFailure } from '../../src/kitchen/reminders/messenger.ts';
import type { OutboxMessage, Reminder } from '../../src/kitchen/reminders/reminder.ts';
import { slackMessenger } from '../../src/slack/messenger.ts';

const messenger = slackMessenger({
  botToken: 'xoxb-1',
  apiUrl: 'http://slack.test/api/',
  channels: { kitchen: 'C1', dietitian: 'C2' },
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

afterEach(() => {
  expect(nock.isDone()).toBe(true);
  nock.cleanAll();
});

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
    ['not_in_channel', { reason: 'not_in_channel', outcome: 'refused' }],
    ['is_archived', { reason: 'is_archived', outcome: 'refused' }],
    ['internal_error', { reason: 'internal_error', outcome: 'unanswered' }],
  ])('%s', async (error, details) => {
    api().post('/api/chat.postMessage').reply(200, { ok: false, error });
    expect(await failure(messenger.send(message))).toEqual(details);
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
