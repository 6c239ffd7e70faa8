import { batchStories } from '../../../kitchen/stock/batch-story.ts';
import type { Desk } from '../../../kitchen/stock/desk.ts';
import type { LotTrace } from '../../../kitchen/stock/lot-trace.ts';
import type { Answer, Section } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { listed } from '../../need-words.ts';
import { pantryWords, tenth } from '../../pantry/amount.ts';
import { NOT_SAID, storyData, storyLine } from '../../stock/story.ts';
import { labelsOf, recallCaution, storySections, sumsText } from './stories.ts';

/** A phone screen holds about this many lines of one list. */
const MOST_POSSIBLE = 12;

/** Where a maker's lot went: what was said first, then what only the pantry counted, then what nobody can rule out. */
export async function lotAnswer(asked: Asked, desk: Desk, lot: string, traced: LotTrace): Promise<Answer> {
  const { foods } = desk.book;
  const { said, counted, possible, onShelf, foodIds } = traced;
  const told = await batchStories(desk.ledger, [...said, ...counted]);
  const open = await batchStories(desk.ledger, possible);
  const name = listed(foodIds.map((id) => foods.get(id)?.name ?? id));
  const codes = (batches: LotTrace['said']) => batches.map(({ code }) => code).join(', ');
  const shelf = onShelf.map(
    ({ foodId, massG }) => `${foods.get(foodId)?.name ?? foodId}: ${pantryWords(massG)}`,
  );
  const more = open.length - MOST_POSSIBLE;
  const isInferred = said.length === 0 ? ', not said but counted by the pantry,' : '';
  return {
    title:
      told.length > 0
        ? `Lot ${lot} of ${name}${isInferred} went into ${sumsText(told)}`
        : `Lot ${lot} of ${name} went into no batch that is known.`,
    sections: [
      ...(told.length > 0 ? storySections(asked, told) : []),
      ...(counted.length > 0 && said.length > 0
        ? [text(`Said when it was made: ${codes(said)}.`), text(`${capital(NOT_SAID)}: ${codes(counted)}.`)]
        : counted.length > 0
          ? [text(`${codes(counted)}: ${NOT_SAID}. Look at the package or the batch sheet.`)]
          : []),
      ...listOf('Still on the shelf by the count', shelf),
      ...listOf(
        'Not ruled out: made with it since it came, of a package nobody named',
        open.slice(0, MOST_POSSIBLE).map((story) => storyLine(asked, story)),
      ),
      ...(more > 0 ? [text(`And ${more} more: ${codes(possible.slice(MOST_POSSIBLE))}.`)] : []),
    ],
    cautions: [recallCaution(asked)],
    next: labelsOf(told),
    audience: 'channel',
    data: {
      lot,
      foods: foodIds,
      batches: told.map((story) => ({
        ...storyData(story),
        knownBy: said.some(({ id }) => id === story.batch.id) ? 'said' : 'pantry_count',
      })),
      possible: open.map(storyData),
      onShelf: onShelf.map(({ foodId, massG }) => ({ food: foodId, massG: tenth(massG) })),
    },
  };
}

const text = (words: string): Section => ({ kind: 'text', text: words });

const listOf = (heading: string, items: readonly string[]): Section[] =>
  items.length > 0 ? [{ kind: 'list', heading, items }] : [];

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
