import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createChat } from '../../src/chat/chat.ts';
import { reminderComposer } from '../../src/chat/reminders/compose.ts';
import { createTick } from '../../src/kitchen/reminders/tick.ts';
import { slackMessenger } from '../../src/slack/messenger.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';
import { faultsOf } from './message-checks.ts';
import { ATHLETE, command, directMessage, eventBody, mention, press, STAFF, TEAM } from './payloads.ts';
import { API, type Call, fakeSlack, sent, type Wired, wire } from './wire.ts';

const STAFF_TOO = 'U0STAFFTOO';
type Blocks = { block_id?: string; elements?: { action_id: string; value: string }[] }[];
let store: RememberingKitchen;
let wired: Wired;
let calls: Call[];
let message: { ts: string; text: string; blocks: Blocks };

const rethrow = (error: unknown): never => {
  throw error;
};

async function begin(): Promise<void> {
  const clock = { now: Date.UTC(2026, 8, 14, 15), nowMs: () => clock.now };
  store = await rememberingKitchen(clock);
  wired = await wire(createChat(store.kitchen, rethrow), { clock, staff: [STAFF, STAFF_TOO] });
  calls = fakeSlack();
  message = await toldMessage();
}
beforeEach(begin);
afterEach(() => store.close());

/** A reminder set and due, as it arrives in the channel. */
async function toldMessage() {
  const { kitchen, memory } = store;
  const books = {
    ledger: kitchen.ledgers(TEAM),
    games: kitchen.games(TEAM),
    reminders: kitchen.reminders(TEAM),
  };
  await books.reminders.add(
    {
      key: 'own:test',
      kind: 'own',
      audience: 'kitchen',
      about: { task: 'soak <!channel> dates' },
      planned: false,
      dueMs: wired.clock.now,
      helpsUntilMs: wired.clock.now + 8 * 3_600_000,
    },
    wired.clock.now,
  );
  const messenger = slackMessenger({
    botToken: 'xoxb-test',
    apiUrl: API,
    channels: { kitchen: 'C0KITCHEN', dietitian: 'C0KITCHEN' },
    staff: async () => [STAFF],
  });
  const tick = createTick({
    book: kitchen.book,
    books,
    queue: memory.queues(TEAM),
    composer: reminderComposer,
    messenger,
    report: rethrow,
  });
  await tick(wired.clock.now);
  const posted = calls.find((call) => String(call.body.text).includes('soak'));
  calls.length = 0;
  return {
    ts: '1.2',
    text: String(posted?.body.text),
    blocks: (posted?.body.blocks ?? []) as Blocks,
  };
}

const button = (label: string) => {
  const all = message.blocks.flatMap(({ block_id, elements = [] }) =>
    elements.map((element) => ({ ...element, block_id })),
  );
  return all.find((element) => JSON.stringify(element).includes(label));
};

async function presses(label: string, user: string, on = message): Promise<Call[]> {
  calls.length = 0;
  const pressed = button(label);
  if (!pressed) throw new Error(`no button ${label}`);
  const payload = press(String(pressed.value), { user: { id: user, team_id: TEAM }, message: on });
  await wired.receiver.send({ ...payload, actions: [{ ...payload.actions[0], ...pressed }] });
  await wired.inFlight.drain(1000);
  return sent(calls);
}

const updated = (call: Call | undefined) => call?.body as unknown as typeof message & { ts: string };

describe('a reminder in the channel', () => {
  test('shows who has it and when, and keeps the buttons that are left', async () => {
    const [call, ...others] = await presses('got it', STAFF);
    expect(others).toEqual([]);
    expect(call).toMatchObject({
      method: 'chat.update',
      body: { channel: 'C0KITCHEN', ts: message.ts },
    });
    expect(faultsOf(call?.body as never)).toEqual([]);
    const blocks = updated(call).blocks;
    expect(JSON.stringify(blocks)).toContain(`"user_id":"${STAFF}"`);
    expect(JSON.stringify(blocks)).toContain('has it, Mon Sep 14, 10:00 am CDT');
    expect(JSON.stringify(blocks)).toContain('soak ');
    expect(blocks.at(-1)?.elements?.map(({ value }) => value)).toEqual(['done R1', 'snooze R1 30 min']);
    expect(blocks.at(-1)?.block_id).not.toBe(message.blocks.at(-1)?.block_id);
    expect(String(call?.body.metadata)).toContain('batchbell_reminder');
  });

  test('then shows that it is done, once, without buttons', async () => {
    const [taken] = await presses('got it', STAFF);
    message = { ...message, ...updated(taken) };
    wired.clock.now += 60_000;
    const [done] = await presses('Done', STAFF_TOO);
    const { blocks, text } = updated(done);
    expect(JSON.stringify(blocks)).not.toContain('has it');
    expect(JSON.stringify(blocks)).toContain('did it, Mon Sep 14, 10:01 am CDT');
    expect(text.match(/Mon Sep 14/g)).toHaveLength(1);
    expect(blocks.some(({ elements }) => elements?.some(({ action_id: id }) => id?.startsWith('mark')))).toBe(
      false,
    );
  });

  test('pressed twice, by one or by two people, tells the same', async () => {
    await presses('Done', STAFF);
    wired.clock.now += 60_000;
    for (const user of [STAFF, STAFF_TOO]) {
      const [again] = await presses('Done', user);
      expect(JSON.stringify(updated(again).blocks)).toContain('did it, Mon Sep 14, 10:00 am CDT');
    }
    expect(await presses('got it', STAFF_TOO)).toMatchObject([{ method: 'chat.update' }]);
    expect(JSON.stringify(calls)).toContain(STAFF);
  });

  test('taken by another: the presser alone is told', async () => {
    await presses('got it', STAFF);
    expect(await presses('got it', STAFF_TOO)).toMatchObject([
      { method: 'respond', body: { response_type: 'ephemeral' } },
    ]);
  });

  test('snoozed: says until when, and comes again once however often it is pressed', async () => {
    const [first] = await presses('Snooze', STAFF);
    expect(JSON.stringify(updated(first).blocks)).toContain('put it off to Mon Sep 14, 10:30 am CDT');
    wired.clock.now += 60_000;
    await presses('Snooze', STAFF_TOO);
    const waiting = await store.kitchen.reminders(TEAM).upcoming(200);
    expect(waiting.filter(({ key }) => key.startsWith('again:'))).toHaveLength(1);
  });

  test('an old message does nothing but say so', async () => {
    wired.clock.now += 40 * 24 * 3_600_000;
    const before = await store.kitchen.reminders(TEAM).upcoming(200);
    const [call] = await presses('Done', STAFF);
    expect(call?.method).toBe('chat.update');
    expect(await store.kitchen.reminders(TEAM).upcoming(200)).toEqual(before);
  });

  test('an athlete and a guest change nothing', async () => {
    expect(await presses('got it', ATHLETE)).toMatchObject([
      { method: 'respond', body: { response_type: 'ephemeral' } },
    ]);
    expect((await store.kitchen.reminders(TEAM).byCode('R1'))?.takenBy).toBeUndefined();
  });

  test('a message that cannot be changed: the presser is answered', async () => {
    calls = fakeSlack({ 'chat.update': 'message_not_found' });
    expect((await presses('got it', STAFF)).map(({ method }) => method)).toEqual(['chat.update', 'respond']);
  });
});

describe('the same, said in words', () => {
  /** Where the messenger's post ended up, by the answers of `fakeSlack`. */
  const TS = '1.2';
  const inHistory = (): Call[] =>
    fakeSlack(
      {},
      {},
      {
        'conversations.history': (asked) => ({
          messages: asked.latest === TS ? [{ ts: TS, text: message.text, blocks: message.blocks }] : [],
        }),
      },
    );
  const WAYS = {
    command: (text: string, user = STAFF) => command(text, { user_id: user }),
    mention: (text: string, user = STAFF) => eventBody(mention(text, { user })),
    'direct message': (text: string, user = STAFF) => eventBody(directMessage(text, { user })),
  };
  async function says(payload: object): Promise<Call[]> {
    calls = inHistory();
    await wired.receiver.send(payload as never);
    await wired.inFlight.drain(1000);
    return sent(calls);
  }
  const drawn = (call: Call | undefined) => {
    // Where it stands and the message's own id are of each kitchen.
    const { ts: _where, metadata, ...rest } = call?.body ?? {};
    const blocks = JSON.stringify(rest.blocks).replace(/told\|[\w-]+/g, 'told|ID');
    return { ...rest, blocks, isNamed: String(metadata).includes('batchbell_reminder') };
  };

  test.each([
    ["I've got R1", 'got it'],
    ['got it', 'got it'],
    ['done R1', 'Done'],
    ['snooze R1 30 min', 'Snooze'],
  ])('"%s" changes the message as its button does, and is answered', async (text, label) => {
    const [byButton] = await presses(label, STAFF);
    for (const payload of Object.values(WAYS)) {
      await store.close();
      await begin();
      const made = await says(payload(text));
      const update = made.find(({ method }) => method === 'chat.update');
      expect(update?.body).toMatchObject({ channel: 'C0KITCHEN', ts: TS });
      expect(drawn(update)).toEqual(drawn(byButton));
      expect(made.filter(({ method }) => /respond|postMessage/.test(method))).toHaveLength(1);
    }
  });

  test('twice, or long after, tells the same and breaks nothing', async () => {
    await says(WAYS.command('done R1'));
    wired.clock.now += 60_000;
    const again = await says(WAYS.command('done R1', STAFF_TOO));
    const update = again.find(({ method }) => method === 'chat.update');
    expect(JSON.stringify(update?.body.blocks)).toContain('did it, Mon Sep 14, 10:00 am CDT');
  });

  test('an athlete changes nothing', async () => {
    expect((await says(WAYS.command('done R1', ATHLETE))).map(({ method }) => method)).toEqual(['respond']);
  });

  test('a message that is gone: the words are answered all the same', async () => {
    calls = fakeSlack({ 'conversations.history': 'channel_not_found' });
    await wired.receiver.send(WAYS.command('done R1') as never);
    await wired.inFlight.drain(1000);
    expect(sent(calls).map(({ method }) => method)).toEqual(['conversations.history', 'respond']);
    expect((await store.kitchen.reminders(TEAM).byCode('R1'))?.doneBy).toBe(STAFF);
  });
});
