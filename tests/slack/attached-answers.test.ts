import nock from 'nock';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createChat } from '../../src/chat/chat.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';
import { faultsOf } from './message-checks.ts';
import { ATHLETE, command, directMessage, eventBody, homePress, mention, STAFF } from './payloads.ts';
import { type Call, fakeSlack, sent, type Wired, wire } from './wire.ts';

const rethrow = (error: unknown): never => {
  throw error;
};
let store: RememberingKitchen;
let wired: Wired;
let uploads: { path: string; body: string }[];

beforeAll(async () => {
  const clock = { now: Date.UTC(2026, 8, 14, 15), nowMs: () => clock.now };
  store = await rememberingKitchen(clock);
  wired = await wire(createChat(store.kitchen, rethrow), { clock });
  for (const text of ['fridge a 37F', 'made 24 oat bars', 'add game dec 9 2pm vs Riverton']) {
    await asks(command(text, { user_id: STAFF }));
  }
}, 60_000);
afterAll(async () => {
  await store.close();
  nock.cleanAll();
});

/** Slack, which gives out an address for each upload and keeps what is sent there. */
function slack(fail: Record<string, string | number> = {}, uploadStatus = 200, closed = 'none'): Call[] {
  let given = 0;
  uploads = [];
  const calls = fakeSlack(
    fail,
    {},
    {
      'files.getUploadURLExternal': () => {
        given += 1;
        return { upload_url: `http://slack.test/upload/F${given}`, file_id: `F${given}` };
      },
      'files.completeUploadExternal': ({ channel_id: channel }) =>
        channel === closed ? { ok: false, error: 'channel_not_found' } : {},
      'conversations.open': () => ({ channel: { id: 'D0STAFF' } }),
    },
  );
  nock('http://slack.test')
    .persist()
    .post(/^\/upload\//)
    .reply((path, body) => {
      uploads.push({ path, body: String(body) });
      return [uploadStatus, 'OK'];
    });
  return calls;
}
async function asks(payload: object, calls = slack()): Promise<Call[]> {
  await wired.receiver.send(payload as never);
  await wired.inFlight.drain(5_000);
  return sent(calls);
}
const shared = (calls: readonly Call[]) =>
  calls.filter(({ method }) => method === 'files.completeUploadExternal');
const reply = (calls: readonly Call[]) => calls.find(({ method }) => /^(?:respond|chat\.)/.test(method));
const BEFORE = { user: STAFF };

const EXPORTS = [
  ['temperature log', /^temperature-.*\.csv$/, /37/],
  ['export schedule', /^prep-schedule\.ics$/, /^BEGIN:VCALENDAR/],
  ['label B1', /^label-B1\.txt$/, /Use by/],
] as const;

describe('an export', () => {
  test.each(EXPORTS)('"%s" in a thread is a file in that thread', async (says, name, holds) => {
    const calls = await asks(eventBody(mention(says, { ...BEFORE, thread_ts: '7.1' })));
    const asked = calls.find(({ method }) => method === 'files.getUploadURLExternal');
    expect(String(asked?.body.filename)).toMatch(name);
    expect(uploads).toMatchObject([{ path: '/upload/F1', body: expect.stringMatching(holds) }]);
    expect(Number(asked?.body.length)).toBe(Buffer.byteLength(uploads[0]?.body ?? ''));
    expect(shared(calls)).toMatchObject([{ body: { channel_id: 'C0KITCHEN', thread_ts: '7.1' } }]);
    expect(String(shared(calls)[0]?.body.files)).toBe('[{"id":"F1"}]');
    const message = reply(calls)?.body as { text: string; blocks: object[] };
    expect(faultsOf(message)).toEqual([]);
    expect(message.text).toMatch(/Attached: \S+\.(?:csv|ics|txt)/);
    expect(JSON.stringify(message.blocks)).not.toContain('BEGIN:VCALENDAR');
  });

  test.each(EXPORTS)(
    '"%s" by command is read by the asker alone: the file goes there directly',
    async (says) => {
      const calls = await asks(command(says, { user_id: STAFF }));
      expect(shared(calls)).toMatchObject([{ body: { channel_id: 'D0STAFF' } }]);
      expect(shared(calls)[0]?.body.thread_ts).toBeUndefined();
      expect(reply(calls)?.body).toMatchObject({
        response_type: 'ephemeral',
        text: expect.stringContaining('Sent to you in a direct message'),
      });
    },
  );

  test('in a direct message is a file there, in its thread', async () => {
    const calls = await asks(
      eventBody(directMessage('label B1', { user: STAFF, channel: 'D0ONE', thread_ts: '8.1' })),
    );
    expect(shared(calls)).toMatchObject([{ body: { channel_id: 'D0ONE', thread_ts: '8.1' } }]);
  });

  test('asked for on the home is sent directly', async () => {
    const calls = await asks(homePress({ action_id: 'next_step_1', value: 'label B1' }));
    expect(shared(calls)).toMatchObject([{ body: { channel_id: 'D0STAFF' } }]);
  });

  test('in a channel without the bot goes to the asker directly', async () => {
    const calls = slack({}, 200, 'C0KITCHEN');
    await asks(eventBody(mention('label B1', BEFORE)), calls);
    expect(shared(calls).map(({ body }) => body.channel_id)).toEqual(['C0KITCHEN', 'D0STAFF']);
    expect(reply(calls)?.body.text).toContain('Sent to you in a direct message: label-B1.txt');
  });

  test.each([
    ['the scope is missing', { 'files.getUploadURLExternal': 'missing_scope' }, 200],
    ['the upload is not taken', {}, 500],
    ['it cannot be shared', { 'files.completeUploadExternal': 'internal_error' }, 200],
  ])('%s: it is said as text instead', async (_, fail, status) => {
    const calls = await asks(eventBody(mention('temperature log', BEFORE)), slack(fail as never, status));
    const message = reply(calls)?.body as { text: string; blocks: object[] };
    expect(JSON.stringify(message.blocks)).toMatch(/temperature-[^"]*\.csv/);
    expect(JSON.stringify(message.blocks)).toContain('37');
    expect(message.text).not.toMatch(/Attached|Sent to you/);
    expect(faultsOf(message)).toEqual([]);
  });

  test('of an athlete is refused before anything is uploaded', async () => {
    expect(shared(await asks(command('temperature log', { user_id: ATHLETE })))).toEqual([]);
    expect(uploads).toEqual([]);
  });

  test('the label of a batch just logged is in the answer and no file', async () => {
    const calls = await asks(command('made 12 oat bars', { user_id: STAFF }));
    expect(uploads).toEqual([]);
    expect(String(reply(calls)?.body.text)).toContain('Label for B2');
  });
});
