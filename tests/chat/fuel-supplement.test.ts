import { afterAll, describe, expect, test } from 'vitest';
import { createChat, type Reply } from '../../src/chat/chat.ts';
import { createConversationMemory } from '../../src/chat/conversation.ts';
import { plainText } from '../../src/chat/plain-text.ts';
import type { Kitchen } from '../../src/kitchen/kitchen.ts';
import { openKitchen } from '../../src/open-kitchen.ts';
import { at, stockRoom } from '../helpers/stock-kitchen.ts';

const kitchen = await openKitchen({ nowMs: () => at('2026-11-03 12:00') });
const memory = createConversationMemory();

async function ask(text: string, where: Kitchen = kitchen): Promise<Reply> {
  const chat = createChat(
    where,
    (error) => {
      throw error;
    },
    memory,
  );
  const asker = { role: 'athlete', who: 'WP-07', workspace: 'W1' } as const;
  return chat.ask({ text, asker, conversation: 'dm', isPrivate: true, nowMs: at('2026-11-03 12:00') });
}

async function told(text: string, where?: Kitchen): Promise<string> {
  const { answer, error } = await ask(text, where);
  if (!answer) throw new Error(error?.message);
  return plainText(answer).replace(/\s+/g, ' ');
}

describe('fuel', () => {
  test('gives a range with its source, for the asker only, and refers to the dietitian', async () => {
    const { answer } = await ask('snack after lift, 82 kg');
    expect(answer?.audience).toBe('asker');
    const text = answer ? plainText(answer).replace(/\s+/g, ' ') : '';
    expect(text).toMatch(/^2[01](?:\.\d)? to 25 g protein after training/);
    expect(text).toMatch(/position stand 2016/);
    expect(text).toMatch(/the sports dietitian sets yours/);
    expect(text).not.toMatch(/kcal|calorie/i);
  });

  test('keeps no body mass in the conversation and repeats none in the answer', async () => {
    const { answer } = await ask('i weigh 83.7 kg, what to eat after lift');
    expect(JSON.stringify(memory.get('dm'))).not.toMatch(/83\.7|weight/);
    expect(JSON.stringify(answer)).not.toContain('83.7');
    const { error } = await ask('i weigh 400 kg, what to eat after lift');
    expect(error?.code).toBe('bad_quantity');
    expect(JSON.stringify(error)).not.toContain('400');
  });

  test('without a body mass stays per kg', async () => {
    expect(await told('what to eat 2 h before a game')).toMatch(/^1 to 4 g carbohydrate per kg of body mass/);
  });

  test('says nothing of another hour when the start is near', async () => {
    expect(await told('what to eat 30 min before a game')).toMatch(/Less than an hour to go/);
  });

  test('offers only what nothing speaks against for a stated need, with the cautions', async () => {
    const { answer } = await ask('nut free snack after lift');
    const { snacks } = (answer?.data ?? {}) as { snacks: { recipe: string }[] };
    expect(snacks.length).toBeGreaterThan(0);
    expect(snacks.map(({ recipe }) => recipe).join(' ')).not.toMatch(/peanut|almond|oat-bars/);
    expect(answer?.cautions.join(' ')).toMatch(/Cross-contact/);
  });
});

describe('fuel from the fridge', async () => {
  const room = await stockRoom();
  afterAll(() => room.database.close());

  test('offers what is in date there now and nothing else', async () => {
    await room.make('2026-11-02 09:00', 12, { id: 'sunflower-cranberry-bars' });
    const { answer } = await ask('snack after lift, 70 kg', { ...kitchen, ledgers: room.ledgers });
    const { snacks } = (answer?.data ?? {}) as { snacks: { recipe: string; there: number }[] };
    expect(snacks.map(({ recipe, there }) => [recipe, there])).toEqual([['sunflower-cranberry-bars', 12]]);
  });
});

describe('a supplement on the register', () => {
  test.each([
    [
      'is lot HW2604A of the vanilla whey ok',
      'approved_tested_lot',
      /lot HW2604A: product approved by the dietitian, lot tested/,
    ],
    ['is lot ZZ11 of the vanilla whey ok', 'approved_other_lot', /not on record: ask your sports dietitian/],
    ['is the vanilla whey ok', 'approved_lot_not_said', /Lots tested by a third party: HW2604A/],
    ['is the cookie whey ok', 'not_approved', /not approved here: ask your sports dietitian/],
    ['is this powder ok', 'which_product', /^Ask your sports dietitian.*Which product, and which lot\?/],
    ['is creatine ok', 'not_on_register', /^Ask your sports dietitian/],
  ])('%s', async (text, standing, words) => {
    const { answer } = await ask(text);
    expect(answer?.data).toMatchObject({ standing });
    expect(await told(text)).toMatch(words);
    expect(answer?.cautions.join()).toMatch(/You answer for whatever is in your body/);
    expect(answer ? plainText(answer) : '').not.toMatch(/\b(?:legal|permitted|allowed|safe|clean)\b/i);
    expect(answer?.audience).toBe('asker');
  });

  test('the kitchen still traces a lot', async () => {
    expect((await ask('trace lot HW2604A')).intent).toBe('trace');
  });
});
