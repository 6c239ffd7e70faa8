import { afterEach, beforeEach, expect, test } from 'vitest';
import { createChat } from '../../src/chat/chat.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';
import { faultsOf } from './message-checks.ts';
import { command, eventBody, mention, STAFF } from './payloads.ts';
import { type Call, fakeSlack, sent, type Wired, wire } from './wire.ts';

let store: RememberingKitchen;
let wired: Wired;
let calls: Call[];
beforeEach(async () => {
  const clock = { now: Date.UTC(2026, 8, 14, 15), nowMs: () => clock.now };
  store = await rememberingKitchen(clock);
  const chat = createChat(store.kitchen, (error) => {
    throw error;
  });
  wired = await wire(chat, { clock });
  calls = fakeSlack();
  await send(command('made 40 oat bars', { user_id: STAFF }));
});
afterEach(() => store.close());

async function send(payload: object): Promise<Call | undefined> {
  calls.length = 0;
  await wired.receiver.send(payload as never);
  await wired.inFlight.drain(2000);
  return sent(calls)[0];
}
const person = { type: 'user', user_id: STAFF };

test('who did it is shown by name to the one person who reads it', async () => {
  const answer = await send(command('trace oat bars', { user_id: STAFF }));
  expect(JSON.stringify(answer?.body.blocks)).toContain(JSON.stringify(person));
  expect(faultsOf(answer?.body as never)).toEqual([]);
});

test('in a channel nobody is called by being named', async () => {
  const answer = await send(eventBody(mention('trace oat bars', { user: STAFF })));
  expect(answer?.method).toBe('chat.postMessage');
  expect(JSON.stringify(answer?.body.blocks)).not.toContain('"type":"user"');
});

test('an id Slack does not know stays as it is written', async () => {
  calls = fakeSlack({ 'users.info': 'user_not_found' });
  const answer = await send(command('trace oat bars', { user_id: STAFF }));
  expect(calls.filter(({ method }) => method === 'users.info')).toHaveLength(1);
  const blocks = JSON.stringify(answer?.body.blocks);
  expect(blocks).toContain(`by ${STAFF}`);
  expect(blocks).not.toContain('"type":"user"');
});

test('a title with a member in it is no header any more', async () => {
  await store.kitchen.reminders('T0HERONS').add(
    {
      key: 'own:x',
      kind: 'own',
      audience: 'kitchen',
      about: { task: 'soak dates' },
      planned: false,
      dueMs: wired.clock.now,
      helpsUntilMs: wired.clock.now + 3_600_000,
    },
    wired.clock.now,
  );
  const answer = await send(command('got it R1', { user_id: STAFF }));
  const [first] = (answer?.body.blocks ?? []) as { type: string }[];
  expect(first?.type).toBe('rich_text');
  expect(JSON.stringify(first)).toContain(JSON.stringify(person));
});
