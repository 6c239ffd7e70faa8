import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Chat, createChat } from '../../src/chat/chat.ts';
import type { PersonRole } from '../../src/chat/request.ts';
import { recordMade } from '../../src/kitchen/stock/record-made.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';
import { at, recipe } from '../helpers/stock-kitchen.ts';

const nowMs = at('2026-11-02 09:30');
let store: RememberingKitchen;
let chat: Chat;
beforeAll(async () => {
  store = await rememberingKitchen({ nowMs: () => nowMs });
  chat = createChat(store.kitchen, (error) => {
    throw error;
  });
  const desk = { ledger: store.kitchen.ledgers('T1'), book: store.kitchen.book, nowMs };
  const batches = [{ recipe: recipe('oat-bars'), pieces: 40, lots: [] }];
  await recordMade(desk, { who: 'IN-01', atMs: at('2026-11-01 09:30'), batches });
});
afterAll(() => store.close());

async function homeOf(role: PersonRole, workspace = 'T1'): Promise<string> {
  const page = await chat.home({
    text: '',
    asker: { role, who: 'U7', workspace },
    conversation: 'home',
    isPrivate: true,
    nowMs,
  });
  return JSON.stringify(page);
}

/** What each kind of person finds on the home. */
const SHOWN: Readonly<Record<string, readonly PersonRole[]>> = {
  '"id":"settings"': ['staff'],
  '"id":"batch"': ['staff', 'intern'],
  '"id":"needs"': ['athlete'],
  'To do now': ['staff', 'intern'],
  'Fridges and freezers': ['staff', 'intern'],
  'Find me one without': ['athlete'],
  'Contains: milk': ['athlete'],
  '40 oat bars': ['staff', 'intern', 'athlete'],
  'What this kitchen makes': ['guest'],
};

test.each(Object.entries(SHOWN))('%s is for %j', async (words, roles) => {
  for (const role of ['staff', 'intern', 'athlete', 'guest'] as const) {
    expect([role, (await homeOf(role)).includes(words)]).toEqual([role, roles.includes(role)]);
  }
});

test('another workspace sees nothing of it', async () => {
  for (const role of ['staff', 'athlete'] as const) expect(await homeOf(role, 'T2')).not.toContain('B1');
});

test('nobody is shown calories', async () => {
  for (const role of ['staff', 'athlete', 'guest'] as const)
    expect(await homeOf(role)).not.toMatch(/kcal|calorie/i);
});
