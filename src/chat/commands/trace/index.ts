import { batchStories } from '../../../kitchen/stock/batch-story.ts';
import type { Desk } from '../../../kitchen/stock/desk.ts';
import type { Batch } from '../../../kitchen/stock/ledger.ts';
import { sayDate } from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked, Command } from '../../command.ts';
import { deskOf } from '../../stock/desk.ts';
import { lotsLine, overrideLines, storyData, storyLine } from '../../stock/story.ts';
import { pastDay } from '../../stock/when.ts';
import { batchCalled, codeSaid } from '../../stock/which.ts';
import { askWhichRecipe, recipeMeant } from '../../which-recipe.ts';
import { traceHead } from './head.ts';
import { labelAnswer } from './label.ts';

/** From a maker's lot to our batches, from a batch to its lots; and the label of a batch. */
export const trace: Command = {
  ...traceHead,
  async answers(asked) {
    const desk = deskOf(asked);
    const code = codeSaid(asked.slots);
    if (asked.slots.output === 'label') return labelAnswer(asked, desk, code);
    const { lot } = asked.slots;
    if (typeof lot === 'string') {
      const holding = await desk.ledger.batches({ lot });
      if (holding.length > 0) return stories(asked, desk, holding, `Lot ${lot} went into`);
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
    `No batch was logged with lot ${lot.slice(0, 40)}.`,
    'A lot is known when it was said: "made 40 oat bars with lot HW2604A of vanilla whey". What the pantry took of a lot by itself is not told here: if it is recalled, set aside what was made since it came and look at the batch sheets.',
  );

async function stories(
  asked: Asked,
  desk: Desk,
  batches: readonly Batch[],
  before: string,
): Promise<Answered> {
  const told = await batchStories(desk.ledger, batches);
  const sum = (pick: (story: (typeof told)[number]) => number) =>
    told.reduce((total, each) => total + pick(each), 0);
  const left = told.flatMap((story) => story.left).reduce((total, { pieces }) => total + pieces, 0);
  const overrides = told.flatMap(overrideLines);
  const codes = told.map(({ batch }) => batch.code).join(', ');
  return {
    answer: {
      title: `${before} ${told.length === 1 ? '1 batch' : `${told.length} batches`}, ${codes}: ${sum(({ made }) => made)} made, ${sum(({ served }) => served)} served, ${sum(({ tossed }) => tossed)} tossed, ${left} left.`,
      sections: [
        { kind: 'list', items: told.map((story) => storyLine(asked, story)) },
        { kind: 'list', heading: 'Lots', items: told.map((story) => lotsLine(asked, story)) },
        ...(overrides.length > 0
          ? [{ kind: 'list' as const, heading: 'Staff override', items: overrides }]
          : []),
      ],
      cautions: [
        `Recalled? Set all of it aside, serve none, and tell ${asked.kitchen.book.settings.contacts.dietitian} now. Only lots that were logged are known here.`,
      ],
      next: told
        .slice(0, 2)
        .map(({ batch }) => ({ label: `label ${batch.code}`, says: `label ${batch.code}` })),
      audience: 'channel',
      data: { batches: told.map(storyData) },
    },
  };
}
