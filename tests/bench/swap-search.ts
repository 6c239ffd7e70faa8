import { createChat } from '../../src/chat/chat.ts';
import type { Kitchen } from '../../src/kitchen/kitchen.ts';
import { median, type Row, timings } from './row.ts';

const MOST_MS = 10;

/** One swap by need over the whole table, through the chat, the recipe changing every time. */
export async function swapSearch(kitchen: Kitchen): Promise<Row> {
  const chat = createChat(kitchen, () => '');
  const asker = { role: 'staff', who: 'staff', workspace: 'bench' } as const;
  const titles = [...kitchen.book.recipes.values()].map(({ title }) => title);
  let turn = 0;
  const ask = async (): Promise<void> => {
    turn += 1;
    const text = `nut free version of ${titles[turn % titles.length]}`;
    const request = { text, asker, conversation: 'bench', isPrivate: true, nowMs: kitchen.clock.nowMs() };
    const reply = await chat.ask(request);
    if (reply.intent !== 'swap' || !reply.answer) throw new Error(`"${text}" got no swap to measure.`);
  };
  await timings(ask, 500, 100);
  const each = median(await timings(ask, 3_000, 2_000));
  return {
    what: `swap by need over ${kitchen.book.foods.size} foods`,
    measured: `${each.toFixed(1)} ms median`,
    beside: '',
    target: `at most ${MOST_MS} ms`,
    met: each <= MOST_MS,
  };
}
