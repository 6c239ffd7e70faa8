import { batchStories } from '../../../kitchen/stock/batch-story.ts';
import type { Desk } from '../../../kitchen/stock/desk.ts';
import { addDays, dateOf } from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answer } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { storyData, storyLine } from '../../stock/story.ts';
import { whichSaid } from '../../stock/which.ts';

const RECENT_DAYS = 14;

/** "who made the oat bars tuesday": batches with their makers, latest first. */
export async function batchInfo(asked: Asked, desk: Desk): Promise<Answer> {
  const { code, recipeId, madeDate } = await whichSaid(asked, desk);
  const today = dateOf(asked.request.nowMs, asked.kitchen.book.settings.timeZone);
  const batches = await desk.ledger.batches({
    ...(code === undefined ? {} : { codes: [code] }),
    ...(recipeId === undefined ? {} : { recipeId }),
    ...(madeDate === undefined ? {} : { madeDate }),
    ...(code === undefined && madeDate === undefined ? { madeFrom: addDays(today, -RECENT_DAYS) } : {}),
  });
  const stories = (await batchStories(desk.ledger, batches.slice(-10))).reverse();
  const [first, ...more] = stories.map((story) => storyLine(asked, story));
  if (first === undefined) {
    throw new Problem(
      'not_found',
      'No such batch was logged.',
      'Ask for another day, like "who made the oat bars monday", or "stock".',
    );
  }
  return {
    title: `${first}.`,
    sections: more.length > 0 ? [{ kind: 'list', heading: 'Before it', items: more }] : [],
    cautions: [],
    next: stories
      .slice(0, 1)
      .map(({ batch }) => ({ label: `trace ${batch.code}`, says: `trace batch ${batch.code}` })),
    audience: 'channel',
    data: { batches: stories.map(storyData) },
  };
}
