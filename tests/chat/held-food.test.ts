import { afterEach, beforeEach, expect, test } from 'vitest';
import { type Chat, createChat } from '../../src/chat/chat.ts';
import type { PersonRole } from '../../src/chat/request.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';
import { at } from '../helpers/stock-kitchen.ts';

let store: RememberingKitchen;
let chat: Chat;
let nowMs = 0;
beforeEach(async () => {
  nowMs = at('2026-11-02 08:00');
  store = await rememberingKitchen({ nowMs: () => nowMs });
  chat = createChat(store.kitchen, (error) => {
    throw error;
  });
  for (const text of ['made 40 oat bars', 'made 20 sunflower cranberry bars', 'made 20 seed trail mix'])
    expect((await say(text)).error).toBeUndefined();
  nowMs += 3 * 3_600_000;
});
afterEach(() => store.close());

const say = (text: string, role: PersonRole = 'staff') =>
  chat.ask({
    text,
    asker: { role, who: role === 'staff' ? 'ST-01' : 'IN-01', workspace: 'T1' },
    conversation: role,
    isPrivate: true,
    nowMs,
  });
/** All that an answer says, its data left out. */
const textOf = async (text: string, role: PersonRole = 'staff') => {
  const { answer } = await say(text, role);
  return JSON.stringify([answer?.title, answer?.sections, answer?.cautions]);
};
const stock = async () => (await say('stock')).answer?.data as { usable: number; held: number };

test('food in a fridge whose last reading is warm is held until a reading at 41 °F or below', async () => {
  await say('fridge a 45F');
  expect(await stock()).toMatchObject({ usable: 20, held: 60 });
  const { error } = await say('served 5 oat bars', 'intern');
  expect(error?.message).toBe('Held, serve none of B1: Fridge A last read 45 °F. Nothing was logged.');
  expect(error?.hint).toMatch(/"fridge a 38F".*"release B1: .*"tossed all B1"/);
  expect((await say('took out 3 oat bars')).error?.message).toMatch(/^Held, serve none of B1/);
  nowMs += 600_000;
  expect(await textOf('fridge a 38F')).toMatch(
    /were held for a warm reading.*cannot tell whether food is fit/,
  );
  expect(await stock()).toMatchObject({ usable: 80, held: 0 });
  expect((await say('served 5 oat bars')).error).toBeUndefined();
});

test('a reading taken back holds nothing; what was served before it was warm is still logged', async () => {
  nowMs += 3_600_000;
  await say('fridge a 45F');
  expect((await say('served 5 oat bars at 11:00')).error).toBeUndefined();
  expect((await say('served 5 oat bars')).error?.code).toBe('not_possible');
  await say('undo');
  await say('undo');
  expect(await stock()).toMatchObject({ usable: 80, held: 0 });
});

test('moved out of a warm fridge it stays held until the other one is read', async () => {
  await say('fridge b 38F');
  await say('fridge a 45F');
  await say('move all oat bars to fridge b');
  expect(await stock()).toMatchObject({ held: 60 });
  expect((await say('served 5 oat bars')).error?.message).toMatch(/Fridge A last read 45/);
  nowMs += 60_000;
  await say('fridge b 39F');
  expect(await stock()).toMatchObject({ usable: 60, held: 20 });
});

test('staff release with a reason that is kept; the next warm reading holds it again', async () => {
  await say('fridge a 45F');
  expect((await say('release B1: probe read 39F', 'intern')).error?.code).toBe('not_allowed');
  expect((await say('release B1')).error?.code).toBe('needs_more');
  expect((await say('release B3: not in the fridge')).error?.message).toMatch(/^B3: not held/);
  const { answer } = await say('release B1: probe read 39F, door open');
  expect(answer?.title).toBe('Released by staff: B1. Reason kept: probe read 39F, door open.');
  expect(JSON.stringify(answer)).not.toMatch(/\bsafe\b/i);
  expect(await stock()).toMatchObject({ usable: 60, held: 20 });
  const events = await store.kitchen.ledgers('T1').events(0, nowMs + 1);
  expect(events.at(-1)).toMatchObject({ kind: 'released', who: 'ST-01', note: 'probe read 39F, door open' });
  nowMs += 60_000;
  await say('fridge a 46F');
  expect(await stock()).toMatchObject({ usable: 20, held: 60 });
});

test('a release can be taken back', async () => {
  await say('fridge a 45F');
  await say('release B1, B2: probe read 39F');
  expect(await stock()).toMatchObject({ held: 0 });
  expect((await say('undo')).answer?.title).toMatch(/^Undone: release of held food/);
  expect(await stock()).toMatchObject({ held: 60 });
});

test('a label that changed holds the batches made before, and no need is met by them', async () => {
  const before = await say('nut free stock');
  expect(JSON.stringify(before.answer?.data.clear)).toContain('B2');
  const told = await textOf('label changed: oats now may contain peanuts', 'intern');
  expect(told).toMatch(/Made before: held, serve none/);
  const free = await say('nut free stock');
  expect(JSON.stringify(free.answer?.data.clear)).not.toContain('B2');
  expect(JSON.stringify(free.answer?.data.held)).toContain('B2');
  const { error } = await say('served 5 sunflower cranberry bars');
  expect(error?.message).toMatch(/label of Rolled oats changed since it was made \(may contain peanut\)/);
  expect(error?.hint).toMatch(/checked the label of rolled oats, same as before.*release B2: made from/);
  expect(await textOf('label B2')).toMatch(/CHECK: label of Rolled oats.*peanut/s);
  expect(await stock()).toMatchObject({ usable: 20, held: 60 });
});

test('read and as before, nothing is held; read with something new, staff decide about each batch', async () => {
  await say('label changed: oats now may contain peanuts');
  nowMs += 60_000;
  await say('checked the label of the oats: may contain peanut');
  expect((await say('served 5 sunflower cranberry bars')).error?.message).toMatch(/may contain peanut/);
  await say('release B2: made from the old packages');
  expect((await say('served 5 sunflower cranberry bars')).error).toBeUndefined();
  const free = await say('nut free stock');
  expect(JSON.stringify(free.answer?.data.clear)).not.toContain('B2');
  expect(await textOf('label B2')).toMatch(/may contain peanut/);
  await say('checked the label of the oats, same as before');
  expect(await stock()).toMatchObject({ held: 0 });
});

test('a batch made after the label was checked carries it and is not held', async () => {
  await say('label changed: oats now may contain peanuts');
  await say('checked the label of the oats: may contain peanut');
  await say('made 20 sunflower cranberry bars');
  nowMs += 3 * 3_600_000;
  expect((await say('served 5 sunflower cranberry bars')).error).toBeUndefined();
});
