import { createChat } from '../../src/chat/chat.ts';
import type { Kitchen } from '../../src/kitchen/kitchen.ts';
import { naiveAnswer } from './naive.ts';
import { median, type Row, timings } from './row.ts';

const FOR_MS = 2_000;
/** Until the hot paths are compiled; shorter, a busy machine measures its compiler. */
const WARM_UP_MS = 2_000;
const BATCH = 100;
const LEAST_PER_S = 20_000;

/** Requests answered per second on one core, beside the naive way of starting from the files each time. */
export async function answerRate(kitchen: Kitchen): Promise<Row> {
  const chat = createChat(kitchen, () => '');
  const asker = { role: 'staff', who: 'staff', workspace: 'bench' } as const;
  const request = {
    text: '40 oat bars',
    asker,
    conversation: 'bench',
    isPrivate: true,
    nowMs: kitchen.clock.nowMs(),
  };
  const first = await chat.ask(request);
  if (first.intent !== 'scale' || !first.answer) throw new Error('"40 oat bars" got no answer to measure.');
  const batch = async (): Promise<void> => {
    for (let at = 0; at < BATCH; at += 1) await chat.ask(request);
  };
  let pieces = 0;
  const otherCounts = async (): Promise<void> => {
    for (let at = 0; at < BATCH; at += 1) {
      pieces = (pieces % 2_000) + 1;
      await chat.ask({ ...request, text: `${pieces} oat bars` });
    }
  };
  for (const work of [batch, otherCounts]) await timings(work, WARM_UP_MS, 10_000);
  const ours = median(await timings(batch, FOR_MS, 10_000)) / BATCH;
  const others = median(await timings(otherCounts, FOR_MS, 10_000)) / BATCH;
  const naive = median(await timings(naiveAnswer, FOR_MS, 10_000));
  const perSecond = 1_000 / ours;
  return {
    what: 'parse and answer "40 oat bars"',
    measured: `${Math.round(perSecond)} /s; ${Math.round(1_000 / others)} /s of other counts each time`,
    beside: `${Math.round(1_000 / naive)} /s reading the files each time (${(naive / ours).toFixed(0)} x)`,
    target: `at least ${LEAST_PER_S} /s`,
    met: perSecond >= LEAST_PER_S,
  };
}
