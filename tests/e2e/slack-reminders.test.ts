import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { RememberingKitchen } from '../helpers/remembering-kitchen.ts';
import { faultsOf } from '../slack/message-checks.ts';
import { ATHLETE, command, eventBody, mention, STAFF, TEAM } from '../slack/payloads.ts';
import { type Blocks, buttonsOf, type Message, screensOf, textOf } from './screens.ts';
import type { PeerCall } from './slack-peer.ts';
import { type Mode, startWhole, type WholeService } from './whole-service.ts';

/** A reminder of somebody's own, due now. */
const due =
  (task: string) =>
  async ({ kitchen }: RememberingKitchen, nowMs: number) => {
    await kitchen.reminders(TEAM).add(
      {
        key: `own:${task}`,
        kind: 'own',
        audience: 'kitchen',
        about: { task },
        planned: false,
        dueMs: nowMs,
        helpsUntilMs: nowMs + 8 * 3_600_000,
      },
      nowMs,
    );
  };
const messageIn = (call: PeerCall | undefined, ts = '1789000009.0001'): Message => ({
  ts,
  text: textOf(call),
  blocks: call?.body.blocks as Blocks,
});

describe.each<Mode>(['http', 'socket'])('a reminder over %s', (mode) => {
  let whole: WholeService;
  let screens: ReturnType<typeof screensOf>;
  let told: PeerCall | undefined;
  beforeAll(async () => {
    whole = await startWhole(mode, {}, due('soak dates'));
    screens = screensOf(whole);
    told = (await whole.seen(1)).find(({ body }) => String(body.text).includes('soak dates'));
  });
  afterAll(() => whole.stop());

  test('was posted at its time, with its three buttons', () => {
    expect(told).toMatchObject({ method: 'chat.postMessage', body: { channel: 'C0KITCHEN' } });
    expect(buttonsOf(told?.body.blocks).map(({ value }) => value.split(' ')[0])).toEqual([
      'got',
      'done',
      'snooze',
    ]);
  });

  test('an athlete who presses is told alone, and changes nothing', async () => {
    expect(await screens.presses("I've got it", messageIn(told), ATHLETE)).toMatchObject({
      method: 'respond',
      body: { response_type: 'ephemeral' },
    });
  });

  test('shows who has it, then who did it; pressed again it says the same', async () => {
    const taken = await screens.presses("I've got it", messageIn(told));
    expect(taken).toMatchObject({ method: 'chat.update', body: { channel: 'C0KITCHEN' } });
    expect(faultsOf(taken?.body as never)).toEqual([]);
    expect(JSON.stringify(taken?.body.blocks)).toContain('has it');
    const done = await screens.presses('Done', messageIn(taken));
    expect(JSON.stringify(done?.body.blocks)).toContain('did it');
    const again = await screens.presses('Done', messageIn(taken));
    expect(JSON.stringify(again?.body.blocks)).toContain('did it');
    const old = await screens.presses('Snooze', messageIn(told));
    expect(JSON.stringify(old?.body.blocks)).toContain('did it');
  });
});

describe.each<Mode>(['http', 'socket'])('a reminder that is answered in words over %s', (mode) => {
  let whole: WholeService;
  let code: string;
  beforeEach(async () => {
    whole = await startWhole(mode, {}, due('pit dates'));
    await whole.seen(1);
    code = (await whole.store.kitchen.reminders(TEAM).byKey('own:pit dates'))?.code ?? '';
    whole.forget();
    return () => whole.stop();
  });

  test.each([
    ["I've got", 'has it', ['done', 'snooze']],
    ['done', 'did it', []],
    ['snooze', 'put it off', []],
  ])('"%s R…" shows in its message, by command and by mention', async (verb, did, left) => {
    const text = `${verb} ${code}`;
    for (const payload of [command(text, { user_id: STAFF }), eventBody(mention(text, { user: STAFF }))]) {
      whole.forget();
      await ('command' in payload ? whole.command(payload) : whole.event(payload));
      const calls = await whole.seen(2, /^(?:respond|chat\.)/);
      const update = calls.find(({ method }) => method === 'chat.update');
      expect(update?.body).toMatchObject({ channel: 'C0KITCHEN', ts: '1789000009.0001' });
      expect(faultsOf(update?.body as never)).toEqual([]);
      expect(JSON.stringify(update?.body.blocks)).toContain(did);
      expect(buttonsOf(update?.body.blocks).map(({ value }) => value.split(' ')[0])).toEqual(left);
      expect(calls.some(({ method }) => method === 'respond' || method === 'chat.postMessage')).toBe(true);
    }
  });
});

describe.each<Mode>(['http', 'socket'])('a reminder whose channel is gone, over %s', (mode) => {
  test.each(['is_archived', 'channel_not_found', 'not_in_channel'])(
    '%s: goes to staff directly, once, with the reason',
    async (error) => {
      const whole = await startWhole(mode, { kitchenChannel: 'C0GONE' }, async ({ kitchen }, nowMs) => {
        await kitchen.reminders(TEAM).add(
          {
            key: 'own:gone',
            kind: 'own',
            audience: 'kitchen',
            about: { task: 'soak dates' },
            planned: false,
            dueMs: nowMs + 1,
            helpsUntilMs: nowMs + 8 * 3_600_000,
          },
          nowMs,
        );
      });
      try {
        whole.peer.shut.set('C0GONE', error);
        whole.clock.now += 60_000;
        const posts = async (count: number) =>
          (await whole.seen(count)).filter(({ body }) => String(body.text).includes('soak dates'));
        // The next minute's look comes by itself; it need not be waited for.
        const { startReminders } = await import('../../src/remind.ts');
        const { slackMessenger } = await import('../../src/slack/messenger.ts');
        const messenger = slackMessenger({
          botToken: 'xoxb-test',
          apiUrl: whole.peer.apiUrl,
          channels: { kitchen: 'C0GONE', dietitian: 'C0GONE' },
          staff: async () => [STAFF],
        });
        const { kitchen, memory } = whole.store;
        const parts = { kitchen, memory, workspace: TEAM, messenger, report: () => {} };
        const scheduler = await startReminders(parts);
        await scheduler.look();
        await scheduler.look();
        await scheduler.stop();
        const sent = await posts(2);
        expect(sent.map(({ body }) => body.channel)).toEqual(['C0GONE', STAFF]);
        expect(String(sent[1]?.body.text)).toMatch(/could not be posted in its channel/);
      } finally {
        await whole.stop();
      }
    },
  );
});
