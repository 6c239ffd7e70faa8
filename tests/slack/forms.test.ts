import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type Chat, createChat } from '../../src/chat/chat.ts';
import { FORM_IDS } from '../../src/chat/forms/form.ts';
import { Problem } from '../../src/chat/problem.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';
import { ATHLETE, homePress, press, STAFF, shortcut, TEAM, viewSubmission } from './payloads.ts';
import { viewFaults } from './view-checks.ts';
import { type Call, fakeSlack, sent, type Wired, wire } from './wire.ts';

type View = Parameters<typeof viewFaults>[0];
let store: RememberingKitchen;
let wired: Wired;
let calls: Call[];
const rethrow = (error: unknown): never => {
  throw error;
};

async function begin(change: (chat: Chat) => Chat = (chat) => chat, patienceMs = 20_000): Promise<void> {
  const clock = { now: Date.UTC(2026, 8, 14, 15), nowMs: () => clock.now };
  store = await rememberingKitchen(clock);
  wired = await wire(change(createChat(store.kitchen, rethrow)), {
    clock,
    patienceMs,
  });
  calls = fakeSlack();
}
beforeEach(() => begin());
afterEach(() => store.close());

async function send(payload: object): Promise<Call[]> {
  calls.length = 0;
  expect(await wired.receiver.send(payload as never)).toBe(1);
  await wired.inFlight.drain(2000);
  return sent(calls);
}
const viewOf = (call: Call | undefined): View => call?.body.view as View;
async function opened(id: string): Promise<View> {
  const [, updated] = await send(homePress({ action_id: `form_${id}`, value: '{}' }));
  return viewOf(updated);
}
const submitted = async (view: View, filled: Record<string, string | string[]>, more: object = {}) => {
  const others = await send(viewSubmission(view as never, filled, more));
  return { ack: wired.receiver.acknowledged as Record<string, unknown> | undefined, others };
};
const BATCH = { recipe: 'oat-bars', pieces: '40', place: 'fridge_a', day: '2026-09-14' };

describe('a form', () => {
  test.each(FORM_IDS)('%s opens at once, and is filled when it has been looked up', async (id) => {
    const button = homePress({ action_id: `form_${id}`, value: '{}' });
    const [first, second, ...others] = await send(id === 'settings' ? button : shortcut(`form_${id}`));
    expect(others).toEqual([]);
    expect(first).toMatchObject({ method: 'views.open' });
    expect(calls.findIndex(({ method }) => method === 'views.open')).toBe(0);
    expect(second).toMatchObject({ method: 'views.update', body: { view_id: 'V1', hash: 'h1' } });
    for (const call of [first, second]) expect(viewFaults(viewOf(call))).toEqual([]);
  });

  test('opens from the home and from a message, filled in as the button says', async () => {
    const action = { action_id: 'form_batch', value: '{"recipe":"oat-bars","pieces":"24"}' };
    const payload = press('x', { user: { id: STAFF, team_id: TEAM } });
    for (const body of [homePress(action), { ...payload, actions: [{ ...payload.actions[0], ...action }] }]) {
      const [, filled] = await send(body);
      expect(JSON.stringify(viewOf(filled).blocks)).toContain('"initial_value":"24"');
    }
  });

  test('is opened once when its button is pressed twice in one go', async () => {
    const payload = homePress({ action_id: 'form_game', value: '{}' });
    await send(payload);
    expect(await send(payload)).toEqual([]);
  });

  test('an old button with something else in it opens the form empty', async () => {
    expect(await send(homePress({ action_id: 'form_batch', value: 'x' }))).toHaveLength(2);
  });

  test('of the kitchen tells an athlete so', async () => {
    const [, second] = await send(homePress({ action_id: 'form_batch', value: '{}' }, ATHLETE));
    expect(JSON.stringify(viewOf(second))).toContain('for kitchen staff');
    expect(viewOf(second).submit).toBeUndefined();
  });

  test('that Slack no longer takes leaves nothing behind', async () => {
    calls = fakeSlack({ 'views.open': 'expired_trigger_id' });
    expect((await send(shortcut('form_batch'))).map(({ method }) => method)).toEqual(['views.open']);
  });
});

describe('a form filled in', () => {
  test('is answered in its own view, and written down', async () => {
    const { ack, others } = await submitted(await opened('batch'), BATCH);
    expect(others).toEqual([]);
    expect(ack).toMatchObject({ response_action: 'update' });
    const view = ack?.view as View;
    expect(viewFaults(view)).toEqual([]);
    expect(JSON.stringify(view)).toContain('40 oat bars');
    expect(view.submit).toBeUndefined();
    expect(await store.kitchen.ledgers(TEAM).holdings()).toMatchObject([{ pieces: 40 }]);
  });

  test('wrongly is kept open, with the fault beside its field', async () => {
    const view = await opened('batch');
    const { ack } = await submitted(view, { ...BATCH, pieces: '0' });
    expect(ack).toEqual({
      response_action: 'errors',
      errors: { pieces: 'Write a whole number above zero.' },
    });
    expect((await submitted(view, BATCH)).ack).toMatchObject({ response_action: 'update' });
    expect(await store.kitchen.ledgers(TEAM).holdings()).toHaveLength(1);
  });

  test('with words that would page somebody says them back harmlessly, beside the field', async () => {
    const view = await opened('batch');
    const { ack } = await submitted(view, { ...BATCH, used: '<!channel> butter', replaced: '2% milk' });
    expect(JSON.stringify(ack)).toContain('‹!channel> butter');
    expect(JSON.stringify(ack)).not.toContain('<!channel>');
  });

  test('delivered twice is written down once', async () => {
    const view = await opened('batch');
    await submitted(view, BATCH);
    await submitted(view, BATCH);
    expect(await store.kitchen.ledgers(TEAM).holdings()).toHaveLength(1);
  });

  test.each([
    { state: undefined },
    { state: { values: {} } },
    { title: undefined },
    { state: { values: { pieces: null } } },
  ])('with %o is acknowledged all the same, and writes nothing', async (broken) => {
    const payload = viewSubmission((await opened('batch')) as never, {});
    await send({ ...payload, view: { ...payload.view, ...broken } });
    expect(wired.receiver.acknowledged).toMatchObject({ response_action: 'errors' });
    expect(await store.kitchen.ledgers(TEAM).holdings()).toEqual([]);
  });

  test('by an athlete with the payload of staff writes nothing', async () => {
    const view = await opened('batch');
    const { ack } = await submitted(view, BATCH, { user: { id: ATHLETE, team_id: TEAM } });
    expect(JSON.stringify(ack)).toContain('for kitchen staff');
    expect(await store.kitchen.ledgers(TEAM).holdings()).toEqual([]);
  });

  test('every form of the kitchen says what it wrote', async () => {
    await submitted(await opened('batch'), { ...BATCH, day: '2026-09-13' });
    const cases: [string, Record<string, string | string[]>, string][] = [
      ['count', { doing: 'served', batch: 'B1@fridge_a', pieces: '12' }, '12 oat bars served'],
      ['reading', { fridge_a: '44', unit: 'F' }, 'above 41 °F'],
      ['game', { day: '2026-09-19', time: '14:00', opponent: 'Riverton', side: 'home' }, 'Riverton'],
      ['settings', { zone: 'America/Denver', most_days: '5', calories: 'no' }, 'Saved'],
    ];
    for (const [id, filled, says] of cases) {
      const { ack } = await submitted({ ...(await opened(id)), id: `V-${id}` }, filled);
      expect([id, JSON.stringify(ack)]).toEqual([id, expect.stringContaining(says)]);
      expect(viewFaults(ack?.view as View)).toEqual([]);
    }
  });
});

describe('a form while the memory is away', () => {
  let isAway = false;
  const lost = () => {
    if (isAway) throw new Problem('unavailable', 'The memory is away.', 'Send it again in a moment.');
  };
  beforeEach(async () => {
    isAway = false;
    await store.close();
    await begin((chat) => ({
      ...chat,
      forms: {
        open: async (...given) => {
          lost();
          return chat.forms.open(...given);
        },
        submit: async (...given) => {
          lost();
          return chat.forms.submit(...given);
        },
      },
    }));
  });

  test('stays open with what was typed, and says what is wrong', async () => {
    const view = await opened('batch');
    isAway = true;
    const { ack } = await submitted(view, BATCH);
    expect(ack).toMatchObject({ response_action: 'errors' });
    expect(JSON.stringify(ack)).toContain('The memory is away. Send it again in a moment.');
    isAway = false;
    expect((await submitted(view, BATCH)).ack).toMatchObject({ response_action: 'update' });
  });

  test('says so instead of opening for ever', async () => {
    isAway = true;
    const [, second] = await send(shortcut('form_batch'));
    expect(JSON.stringify(viewOf(second))).toContain('The memory is away.');
  });
});

describe('a form that takes longer than Slack waits', () => {
  let finish = (): void => {};
  const slow = (chat: Chat): Chat => ({
    ...chat,
    forms: {
      open: chat.forms.open,
      async submit(...given) {
        await new Promise<void>((resolve) => {
          finish = resolve;
        });
        return chat.forms.submit(...given);
      },
    },
  });
  beforeEach(async () => {
    await store.close();
    await begin(slow, 5);
  });

  async function slowly(filled: Record<string, string>): Promise<{ ack: View; later: Call[] }> {
    const view = await opened('batch');
    calls.length = 0;
    const sending = wired.receiver.send(viewSubmission(view as never, filled) as never);
    while (!wired.receiver.acknowledged) await new Promise((resolve) => setTimeout(resolve, 2));
    const ack = (wired.receiver.acknowledged as { view: View }).view;
    finish();
    await sending;
    await wired.inFlight.drain(2000);
    return { ack, later: sent(calls) };
  }

  test('is acknowledged in time, and its view is changed when it is done', async () => {
    const { ack, later } = await slowly(BATCH);
    expect(JSON.stringify(ack)).toContain('Writing it down');
    expect(String(ack.private_metadata)).toContain('oat-bars');
    expect(later).toMatchObject([{ method: 'views.update', body: { view_id: 'V1' } }]);
    expect(JSON.stringify(viewOf(later[0]))).toContain('40 oat bars');
  });

  test('with a fault comes back with all that was typed', async () => {
    const { later } = await slowly({ ...BATCH, pieces: '0', lot: 'L42' });
    const text = JSON.stringify(viewOf(later[0]));
    expect(text).toContain('Write a whole number above zero');
    expect(text).toContain('"initial_value":"L42"');
    expect(viewOf(later[0])).toMatchObject({ callback_id: 'form_batch' });
    expect(viewFaults(viewOf(later[0]))).toEqual([]);
  });

  test('whose view was closed tells the outcome directly', async () => {
    const view = await opened('batch');
    calls = fakeSlack({ 'views.update': 'not_found' });
    const sending = wired.receiver.send(viewSubmission(view as never, BATCH) as never);
    while (!wired.receiver.acknowledged) await new Promise((resolve) => setTimeout(resolve, 2));
    finish();
    await sending;
    await wired.inFlight.drain(2000);
    expect(sent(calls).at(-1)).toMatchObject({ method: 'chat.postMessage', body: { channel: STAFF } });
  });
});
