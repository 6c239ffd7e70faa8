import { openedLines } from '../../kitchen/pantry/waste.ts';
import { addDays } from '../../kitchen/time/zone.ts';
import type { Answer } from '../answer.ts';
import type { Asked } from '../command.ts';
import { todayOf } from '../games/when.ts';
import { KITCHEN_ROLES } from '../roles.ts';
import { deskOf } from '../stock/desk.ts';
import { comingDay } from '../stock/when.ts';
import { openedSections } from './waste-lines.ts';

/** An answer about dates of made pieces with the opened packages of the pantry beside it, which end as well. */
export async function withOpened(asked: Asked, answer: Answer, which: 'past' | 'coming'): Promise<Answer> {
  const { slots, request } = asked;
  const isOfOne = slots.recipe !== undefined || slots.batch !== undefined || slots.unit !== undefined;
  if (isOfOne || !KITCHEN_ROLES.includes(request.asker.role)) return answer;
  const { ledger, book } = deskOf(asked);
  const today = todayOf(asked);
  const day = comingDay(asked, slots.when);
  const opened = await openedLines(ledger, book);
  const pastDate = opened.filter(({ useBy }) => useBy < today);
  const endsSoon =
    which === 'past'
      ? []
      : opened.filter(({ useBy }) =>
          day === undefined ? useBy >= today && useBy <= addDays(today, 1) : useBy === day,
        );
  if (pastDate.length + endsSoon.length === 0) return answer;
  return {
    ...answer,
    sections: [...answer.sections, ...openedSections({ pastDate, endsSoon })],
    data: { ...answer.data, openedPastDate: pastDate, openedEnding: endsSoon },
  };
}
