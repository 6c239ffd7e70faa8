import { isDateMarked, recordOpened } from '../../../kitchen/stock/record-opened.ts';
import { sayDate } from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked } from '../../command.ts';
import { findFood } from '../../find-food.ts';
import { deskOf, doingOf } from '../../stock/desk.ts';
import { comingDay, whenDone } from '../../stock/when.ts';
import { LOCAL_CODE } from '../../stock/words.ts';

/** "opened greek yogurt": its date mark, which later governs what is mixed from it. */
export async function opened(asked: Asked): Promise<Answered> {
  const { slots, kitchen } = asked;
  if (slots.ingredient === undefined) {
    throw new Problem(
      'needs_more',
      'Which package was opened?',
      'Write it like "opened 2% milk, use by 11/5".',
    );
  }
  const food = await findFood(kitchen.book, slots.ingredient);
  const makersUseBy = comingDay(asked, slots.use_by);
  // The only day said is the maker's: it was not opened on the day it ends.
  const openedOn = slots.made === slots.use_by ? undefined : slots.made;
  const opening = await recordOpened(deskOf(asked), {
    ...doingOf(asked, whenDone(asked, openedOn)),
    food,
    ...(typeof slots.lot === 'string' ? { lot: slots.lot } : {}),
    ...(makersUseBy === undefined ? {} : { makersUseBy }),
  });
  const lot = opening.lot === undefined ? '' : `, lot ${opening.lot}`;
  const until =
    opening.useBy === undefined
      ? isDateMarked(food) || food.storage !== 'cold'
        ? 'no date mark needed'
        : 'follow the date on the package'
      : `use by ${sayDate(opening.useBy)}`;
  return {
    answer: {
      title: `${opening.again ? 'Already logged: ' : ''}${food.name}${lot}, opened ${sayDate(opening.openedDate)}: ${until}.`,
      sections: [
        {
          kind: 'text',
          text: whyText(food.storage === 'cold' && !isDateMarked(food), opening.useBy !== undefined),
        },
      ],
      cautions: [LOCAL_CODE],
      next: [{ label: 'undo', says: 'undo' }],
      audience: 'channel',
      data: {
        logged: !opening.again,
        food: food.id,
        openedDate: opening.openedDate,
        useBy: opening.useBy ?? null,
      },
    },
  };
}

function whyText(isExempt: boolean, hasDate: boolean): string {
  if (isExempt && !hasDate)
    return 'The model code asks for no 7-day mark on commercially made cultured dairy: the maker\'s date holds. Tell it to me, like "opened greek yogurt use by 11/5", and what is mixed from it will not run past it.';
  return hasDate
    ? "The day opened is day 1, at most 7 days and not past the maker's date (FDA Food Code 3-501.17). What is mixed from it will not run past it."
    : 'Kept dry, it carries no 7-day mark; follow the package.';
}
