import { matches, type Which } from '../../../kitchen/stock/choose.ts';
import type { Desk } from '../../../kitchen/stock/desk.ts';
import { recordTossed, recordTossedExpired, type TakenPieces } from '../../../kitchen/stock/record-taken.ts';
import { mustGo } from '../../../kitchen/stock/usable.ts';
import type { Answered, Asked, Command } from '../../command.ts';
import { foodTossed } from '../../pantry/counted.ts';
import { deskOf, doingOf } from '../../stock/desk.ts';
import { settled, withQuestion } from '../../stock/merged.ts';
import { itemsTaken, recipesTaken, takenData, takenLine } from '../../stock/taken.ts';
import { assumedWhen, whenDone } from '../../stock/when.ts';
import { askWhichStock, whichSaid } from '../../stock/which.ts';
import { undo } from '../served/undo.ts';
import { tossedHead } from './head.ts';

/** What was thrown out, and why. */
export const tossed: Command = {
  ...tossedHead,
  answers: (asked) => (asked.slots.undo === true ? undo(asked) : log(withQuestion(asked))),
};

async function log(asked: Asked): Promise<Answered> {
  const { slots } = asked;
  if (slots.ingredient !== undefined) return { answer: await foodTossed(asked, noteOf(asked)) };
  const desk = deskOf(asked);
  const atMs = whenDone(asked, slots.when);
  const doing = doingOf(asked, atMs, noteOf(asked));
  if (slots.reason === 'expired' && slots.quantity === 'all') {
    const which = await whichSaid(asked, desk);
    if (!(await hasExpired(desk, which))) return nothingExpired(asked);
    const items = [{ which, pieces: 'all' as const }];
    return answered(asked, atMs, await recordTossedExpired(desk, { ...doing, items }));
  }
  const items = await itemsTaken(asked, desk);
  if (items === undefined) return askWhichStock(asked, 'tossed', await desk.ledger.holdings());
  return answered(asked, atMs, await recordTossed(desk, { ...doing, items }));
}

async function hasExpired(desk: Desk, which: Which): Promise<boolean> {
  const { timeZone } = desk.book.settings;
  return (await desk.ledger.holdings()).some(
    (holding) => matches(holding, which) && mustGo(holding, desk.nowMs, timeZone),
  );
}

function nothingExpired(asked: Asked): Answered {
  return {
    answer: {
      title: '0 thrown out: nothing is past its date. Nothing was logged.',
      sections: [],
      cautions: [],
      next: ['what expires tomorrow', 'stock'].map((says) => ({ label: says, says })),
      audience: 'channel',
      data: { logged: false, items: [] },
    },
    conversation: settled(asked, 'tossed'),
  };
}

const noteOf = ({ slots }: Asked): string =>
  typeof slots.note === 'string' ? slots.note : typeof slots.reason === 'string' ? slots.reason : 'waste';

function answered(asked: Asked, atMs: number, tossed: TakenPieces): Answered {
  return {
    answer: {
      title: tossed.again
        ? 'Already logged; nothing was counted twice.'
        : tossed.items
            .map((item) => `${takenLine('thrown out', item)} ${item.left} left to serve.`)
            .join(' '),
      sections: assumedWhen(asked, atMs).map((text) => ({ kind: 'text' as const, text })),
      cautions: [],
      next: ['undo', 'stock'].map((says) => ({ label: says, says })),
      audience: 'channel',
      data: { logged: !tossed.again, items: tossed.items.map(takenData) },
    },
    conversation: settled(asked, 'tossed', recipesTaken(tossed)),
  };
}
