import { type Counted, recordCounted } from '../../../kitchen/stock/record-counted.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked, Command } from '../../command.ts';
import { foodCounted } from '../../pantry/counted.ts';
import { deskOf, doingOf } from '../../stock/desk.ts';
import { settled, withQuestion } from '../../stock/merged.ts';
import { assumedWhen, whenDone } from '../../stock/when.ts';
import { askWhichStock, oneRecipe, whichSaid } from '../../stock/which.ts';
import { piecesOf } from '../../stock/words.ts';
import { undo } from '../served/undo.ts';
import { countedHead } from './head.ts';

/** Puts the stock right by a count made by hand. */
export const counted: Command = {
  ...countedHead,
  answers: (asked) => (asked.slots.undo === true ? undo(asked) : log(withQuestion(asked))),
};

async function log(asked: Asked): Promise<Answered> {
  if (asked.slots.ingredient !== undefined) return { answer: await foodCounted(asked) };
  const desk = deskOf(asked);
  const pieces = asked.slots.quantity ?? asked.slots.remaining;
  if (Array.isArray(asked.slots.items)) {
    throw new Problem(
      'not_possible',
      'I take one count at a time.',
      'Send each by itself, like "counted 25 oat bars".',
    );
  }
  if (typeof pieces !== 'number') {
    throw new Problem('needs_more', 'How many are there?', 'Write a number, like "counted 25 oat bars".');
  }
  const holdings = await desk.ledger.holdings();
  const which = oneRecipe(asked, holdings, await whichSaid(asked, desk));
  if (which === undefined) return askWhichStock(asked, 'counted', holdings);
  const atMs = whenDone(asked, asked.slots.when);
  const count = await recordCounted(desk, {
    ...doingOf(asked, atMs),
    which,
    pieces,
  });
  const ids = which.recipeId === undefined ? [] : [which.recipeId];
  return { answer: answerOf(count, assumedWhen(asked, atMs)), conversation: settled(asked, 'counted', ids) };
}

function answerOf(count: Counted, assumed: readonly string[]): Answered['answer'] {
  const { before, after, taken, added, elsewhere } = count;
  const batch = added?.holding.batch ?? taken[0]?.holding.batch;
  const codes = [
    ...taken.map(({ holding }) => holding.batch.code),
    ...(added ? [added.holding.batch.code] : []),
  ];
  const change =
    after === before
      ? 'as the ledger said'
      : `the ledger said ${before}; ${[...new Set(codes)].join(', ')} put right`;
  return {
    title: count.again
      ? 'Already logged; nothing was counted twice.'
      : `${batch ? piecesOf(after, batch) : after} counted: ${change}.`,
    sections: [
      ...(elsewhere > 0
        ? [`${elsewhere} more are frozen or out of the fridge; the count left them alone.`]
        : []),
      ...assumed,
    ].map((text) => ({ kind: 'text' as const, text })),
    cautions: [],
    next: ['undo', 'stock'].map((says) => ({ label: says, says })),
    audience: 'channel',
    data: { logged: !count.again, before, after, change: after - before, elsewhere, batches: codes },
  };
}
