import { recordCorrected } from '../../../kitchen/stock/record-corrected.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked } from '../../command.ts';
import { deskOf, doingOf } from '../../stock/desk.ts';
import { settled } from '../../stock/merged.ts';
import { codeSaid } from '../../stock/which.ts';
import { piecesOf } from '../../stock/words.ts';

/** "made 38 not 40": the batch this person logged last, or the one named, gets the right number. */
export async function correct(asked: Asked): Promise<Answered> {
  const { quantity, quantity_was: was } = asked.slots;
  if (typeof quantity !== 'number') {
    throw new Problem('needs_more', 'What is the right number?', 'Write it like "made 38 not 40".');
  }
  const code = codeSaid(asked.slots);
  const recipeId = asked.slots.recipe;
  const { batch, before, after, again } = await recordCorrected(deskOf(asked), {
    ...doingOf(asked, asked.request.nowMs),
    pieces: quantity,
    ...(typeof was === 'number' ? { piecesWas: was } : {}),
    ...(code === undefined ? {} : { code }),
    ...(typeof recipeId === 'string' ? { recipeId } : {}),
  });
  return {
    answer: {
      title: again
        ? 'Already corrected; nothing was changed twice.'
        : `${piecesOf(after, batch)} in batch ${batch.code}, not ${before}. Corrected.`,
      sections: [],
      cautions: [],
      next: ['undo', 'stock'].map((says) => ({ label: says, says })),
      audience: 'channel',
      data: { logged: !again, batch: batch.code, before, after },
    },
    conversation: settled(asked, 'made', [batch.recipeId]),
  };
}
