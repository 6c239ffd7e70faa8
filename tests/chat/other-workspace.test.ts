import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Chat, createChat } from '../../src/chat/chat.ts';
import { COMMANDS } from '../../src/chat/commands/index.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';

const clock = { nowMs: () => Date.UTC(2026, 8, 14, 15) };

/** What the first workspace wrote down, one of everything. */
const WRITTEN = [
  'made 37 oat bars',
  'made 23 cherry bars',
  'tossed 2 oat bars, dropped',
  'fridge A 39 F',
  'game Fri 2pm vs Ridgeline',
  'remind us friday 9:00 to thaw the dough',
  'WP-07 needs: peanut',
  'my needs: sesame',
];
const ASKED = [
  ...COMMANDS.flatMap(({ help }) => help.examples),
  'stock',
  'what expires this week',
  'schedule',
  'next game',
  'reminders',
  'roster',
  'needs of WP-07',
  'my needs',
  'temperature log',
  'trace oat bars',
  'settings',
  'undo',
];

let [full, empty]: RememberingKitchen[] = [];
let [here, elsewhere]: Chat[] = [];
beforeAll(async () => {
  full = await rememberingKitchen(clock);
  empty = await rememberingKitchen(clock);
  here = createChat({ ...full.kitchen, choices: full.memory.choices }, () => 'id');
  elsewhere = createChat({ ...empty.kitchen, choices: empty.memory.choices }, () => 'id');
  for (const text of WRITTEN) await ask(here, 'T0HERONS', text);
}, 60_000);
afterAll(async () => {
  await full?.close();
  await empty?.close();
});

async function ask(chat: Chat | undefined, workspace: string, text: string): Promise<string> {
  const reply = await chat?.ask({
    text,
    asker: { role: 'staff', who: 'U0WHO', workspace },
    conversation: `${workspace}:${text}`,
    isPrivate: true,
    nowMs: clock.nowMs(),
  });
  return JSON.stringify(reply);
}

/** The words of a reply, ids of the moment left out; what falls due at one instant comes in any order. */
const words = (reply: string): readonly string[] =>
  reply
    .replace(/[0-9a-z]{9}-[0-9a-z]{16}|\b[0-9a-f]{20}\b/g, 'id')
    .split(/\W+/)
    .sort();

describe('another workspace of the same service', () => {
  test('has something to find in the first', async () => {
    const stock = await ask(here, 'T0HERONS', 'stock');
    expect(stock).toMatch(/3[57]/);
    expect(await ask(here, 'T0HERONS', 'schedule')).toContain('Ridgeline');
    expect(await ask(here, 'T0HERONS', 'roster')).toContain('WP-07');
  });

  test.each([...new Set(ASKED)])('finds nothing of the first: %s', async (text) => {
    expect(words(await ask(here, 'T0TERNS', text))).toEqual(words(await ask(elsewhere, 'T0TERNS', text)));
  });

  test('changed nothing in the first', async () => {
    expect(await ask(here, 'T0HERONS', 'schedule')).toContain('Ridgeline');
    expect(await ask(here, 'T0HERONS', 'stock')).toMatch(/3[57]/);
  });
});
