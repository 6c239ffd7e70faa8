import { batchStories } from '../../../kitchen/stock/batch-story.ts';
import type { Desk } from '../../../kitchen/stock/desk.ts';
import type { Batch } from '../../../kitchen/stock/ledger.ts';
import { traceLot } from '../../../kitchen/stock/lot-trace.ts';
import { sayDate } from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked, Command } from '../../command.ts';
import { deskOf } from '../../stock/desk.ts';
import { storyData } from '../../stock/story.ts';
import { pastDay } from '../../stock/when.ts';
import { batchCalled, codeSaid } from '../../stock/which.ts';
import { askWhichRecipe, recipeMeant } from '../../which-recipe.ts';
import { traceHead } from './head.ts';
import { labelAnswer } from './label.ts';
import { lotAnswer } from './lot-answer.ts';
import { labelsOf, recallCaution, storySections, sumsText } from './stories.ts';

/** From a maker's lot to our batches, from a batch to its lots; and the label of a batch. */
export const trace: Command = {
  ...traceHead,
  async answers(asked) {
    const desk = deskOf(asked);
    const code = codeSaid(asked.slots);
    if (asked.slots.output === 'label') return labelAnswer(asked, desk, code);
    const { lot } = asked.slots;
    if (typeof lot === 'string') {
      const traced = await traceLot(desk.ledger, lot, desk.book.settings.timeZone);
      if (traced) return { answer: await lotAnswer(asked, desk, lot, traced) };
      if (code === undefined) throw noSuchLot(lot);
    }
    if (code !== undefined) return stories(asked, desk, [await batchCalled(desk, code)], 'Traced:');
    return ofRecipe(asked, desk);
  },
};

async function ofRecipe(asked: Asked, desk: Desk): Promise<Answered> {
  const recipe = await recipeMeant(asked);
  if (!recipe) return askWhichRecipe(asked, 'trace', 'Trace what? Name a recipe, a batch (B3) or a lot.');
  const madeDate = pastDay(asked, asked.slots.made);
  const found = await desk.ledger.batches({
    recipeId: recipe.id,
    ...(madeDate === undefined ? {} : { madeDate }),
  });
  if (found.length > 0) return stories(asked, desk, found.slice(-10), 'Traced:');
  throw new Problem(
    'not_found',
    `No ${recipe.title.toLowerCase()} were logged${madeDate === undefined ? '' : ` on ${sayDate(madeDate)}`}.`,
    'Try another day, like "trace oat bars monday", or "stock".',
  );
}

const noSuchLot = (lot: string): Problem =>
  new Problem(
    'not_found',
    `No batch and no delivery was logged with lot ${lot.slice(0, 40)}.`,
    'A lot is known when it was said: "received 50 lb oats lot A12", "made 40 oat bars with lot HW2604A of vanilla whey". If it is recalled, set aside what was made since it came and look at the batch sheets.',
  );

async function stories(
  asked: Asked,
  desk: Desk,
  batches: readonly Batch[],
  before: string,
): Promise<Answered> {
  const told = await batchStories(desk.ledger, batches);
  return {
    answer: {
      title: `${before} ${sumsText(told)}`,
      sections: storySections(asked, told),
      cautions: [recallCaution(asked)],
      next: labelsOf(told),
      audience: 'channel',
      data: { batches: told.map(storyData) },
    },
  };
}
