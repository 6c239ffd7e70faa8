import { CONSUMER_HOT_MS, CONSUMER_MS, HOT_DAY_F } from '../../../kitchen/stock/record-moved.ts';
import { recordServed, type TakenPieces } from '../../../kitchen/stock/record-taken.ts';
import type { Answer } from '../../answer.ts';
import type { Answered, Asked, Command } from '../../command.ts';
import { deskOf, doingOf } from '../../stock/desk.ts';
import { settled, withQuestion } from '../../stock/merged.ts';
import { itemsTaken, recipesTaken, takenData, takenLine } from '../../stock/taken.ts';
import { assumedWhen, whenDone } from '../../stock/when.ts';
import { askWhichStock } from '../../stock/which.ts';
import { clockText } from '../../stock/words.ts';
import { servedHead } from './head.ts';
import { release } from './release.ts';
import { takeOut } from './take-out.ts';
import { undo } from './undo.ts';

/** What was handed out, what was taken out of the fridge, and the undo of the last entry. */
export const served: Command = {
  ...servedHead,
  answers(asked) {
    const whole = withQuestion(asked);
    if (whole.slots.release !== undefined) return release(whole);
    if (whole.slots.undo === true) return undo(whole);
    return whole.slots.out === true ? takeOut(whole) : logServed(whole);
  },
};

async function logServed(asked: Asked): Promise<Answered> {
  const desk = deskOf(asked);
  const items = await itemsTaken(asked, desk);
  if (items === undefined) return askWhichStock(asked, 'served', await desk.ledger.holdings());
  const atMs = whenDone(asked, asked.slots.when);
  const taken = await recordServed(desk, { ...doingOf(asked, atMs, noteOf(asked)), items });
  return {
    answer: servedAnswer(asked, taken, atMs),
    conversation: settled(asked, 'served', recipesTaken(taken)),
  };
}

/** For whom or where, kept with the entry; never a person. */
function noteOf({ slots }: Asked): string | undefined {
  const parts = [slots.reason, slots.team].filter((part) => typeof part === 'string' && part !== 'served');
  return parts.length > 0 ? parts.join(', ') : undefined;
}

function servedAnswer(asked: Asked, taken: TakenPieces, atMs: number): Answer {
  return {
    title: taken.again
      ? 'Already logged; nothing was counted twice.'
      : taken.items.map((item) => `${takenLine('served', item)} ${item.left} left to serve.`).join(' '),
    sections: assumedWhen(asked, atMs).map((text) => ({ kind: 'text' as const, text })),
    cautions: taken.again ? [] : leavingCautions(asked, atMs),
    next: ['undo', 'stock'].map((says) => ({ label: says, says })),
    audience: 'channel',
    data: { logged: !taken.again, items: taken.items.map(takenData) },
  };
}

/** Food that leaves the fridge with people: how long it keeps without cold. */
function leavingCautions(asked: Asked, atMs: number): string[] {
  const { home, reason, air_temp_f: air } = asked.slots;
  const isHot = typeof air === 'number' && air > HOT_DAY_F;
  if (home === true) {
    const by = clockText(asked, atMs + (isHot ? CONSUMER_HOT_MS : CONSUMER_MS));
    return [
      `Going home without ice: eat or throw out by ${by} (${isHot ? '1 hour above 90 °F' : '2 hours; 1 hour above 90 °F'}, USDA and FDA advice to consumers).`,
    ];
  }
  if (reason !== 'travel') return [];
  return [
    `On the road without cold holding: serve or throw out by ${clockText(asked, atMs + 4 * CONSUMER_HOT_MS)} (4 hours, FDA Food Code model 3-501.19). A cooler that reads 41 °F or below keeps the date instead.`,
  ];
}
