import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type Chat, createChat } from '../../src/chat/chat.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';
import { at } from '../helpers/stock-kitchen.ts';

let store: RememberingKitchen;
let chat: Chat;
const clock = { nowMs: () => at('2026-11-02 09:30') };
beforeEach(async () => {
  store = await rememberingKitchen(clock);
  chat = createChat(store.kitchen, (error) => {
    throw error;
  });
});
afterEach(() => store.close());

const ask = async (text: string) => {
  const asker = { role: 'staff', who: 'U1', workspace: 'T1' } as const;
  const request = { text, asker, conversation: 'c', isPrivate: true, nowMs: clock.nowMs() };
  return (await chat.ask(request)).answer;
};

describe('a batch for a day', () => {
  test('says the day, and the game of that day where one is planned', async () => {
    expect((await ask('40 oat bars for saturday'))?.sections[0]).toEqual({
      kind: 'text',
      text: 'For Sat Nov 7. No game is known on that day.',
    });
    await ask('game sat 2pm vs Riverton');
    const answer = await ask('40 oat bars for saturday');
    expect(answer?.sections[0]).toEqual({
      kind: 'text',
      text: 'For Sat Nov 7. Game: Sat Nov 7, 2:00 pm CST: vs Riverton (home).',
    });
    expect(answer?.data).toMatchObject({ pieces: 40, day: '2026-11-07', games: [expect.any(String)] });
    await ask('cancel game sat');
    expect((await ask('40 oat bars for saturday'))?.data).toMatchObject({ games: [] });
  });

  test('that is past says so, and the amounts hold', async () => {
    const answer = await ask('40 oat bars for yesterday');
    expect(answer?.title).toMatch(/^40 Oat bars: /);
    expect(answer?.sections[0]).toMatchObject({ text: 'Sun Nov 1 is past. The amounts hold for any day.' });
  });

  test.each(['3 bars each for 20', '20 people 3 bars each', '3 oat bars each for 20 people'])(
    '%j is 60',
    async (text) => {
      expect((await ask(text))?.data).toMatchObject({ pieces: 60 });
    },
  );
});
