import type { EventKind, LedgerEvent } from '../../../kitchen/stock/ledger.ts';
import { type Undone, undoLast } from '../../../kitchen/stock/undo.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked } from '../../command.ts';
import { remindersFollow } from '../../games/tied-reminders.ts';
import { scheduleUndone } from '../../games/undone.ts';
import { pantryWords } from '../../pantry/amount.ts';
import { deskOf, doingOf } from '../../stock/desk.ts';
import { entryTime } from '../../stock/taken.ts';
import { kindsToUndo } from '../../stock/undo-meant.ts';
import { piecesOf } from '../../stock/words.ts';

const WHAT: Record<EventKind, string> = {
  made: 'batch made',
  served: 'pieces served',
  tossed: 'pieces thrown out',
  counted: 'count',
  corrected: 'correction',
  moved: 'move',
  opened: 'package opened',
  temperature: 'temperature reading',
  received: 'delivery',
  priced: 'price',
  label: 'note of a label',
  listed: 'change of the shopping list',
  game: 'change of a game',
  calendar: 'change of a calendar',
  released: 'release of held food',
  undone: 'undo',
};

/** Takes back the asker's last entry, of the stock or of a game; both entries stay in the ledger. */
export async function undo(asked: Asked): Promise<Answered> {
  const kinds = kindsToUndo(asked.request.text);
  const meant = kinds && { kinds, otherwise: (last: LedgerEvent) => another(asked, last) };
  const undone = await undoLast(deskOf(asked), doingOf(asked, asked.request.nowMs), meant);
  if (undone.schedule) return scheduleUndone(asked, undone.schedule, await remindersFollow(asked));
  const lines = changes(asked, undone);
  return {
    answer: {
      title: undone.again
        ? 'Already undone; nothing was taken back twice.'
        : `Undone: ${WHAT[undone.event.kind]} of ${entryTime(asked, undone.event.atMs)}.`,
      sections: lines.length > 0 ? [{ kind: 'list', items: lines }] : [],
      cautions: [],
      next: ['stock', 'undo'].map((says) => ({ label: says, says })),
      audience: 'channel',
      data: {
        undone: !undone.again,
        kind: undone.event.kind,
        changes: undone.changed.map(({ holding, pieces }) => ({ batch: holding.batch.code, pieces })),
      },
    },
  };
}

const another = (asked: Asked, last: LedgerEvent): Problem =>
  new Problem(
    'not_possible',
    `Your last entry is another: ${WHAT[last.kind]}, of ${entryTime(asked, last.atMs)}; nothing was undone.`,
    'Entries are undone from the last one back: say "undo" for that one.',
  );

/** What came back and what left again; a move is both, and shows as the place it is in now. */
function changes(asked: Asked, { changed, pantry }: Undone): string[] {
  const pieces = changed.flatMap(({ holding, pieces }) =>
    pieces === 0
      ? []
      : [
          pieces > 0
            ? `${piecesOf(pieces, holding.batch)} back in ${holding.batch.code}`
            : `${piecesOf(-pieces, holding.batch)} out of ${holding.batch.code} again`,
        ],
  );
  const food = pantry.map(({ foodId, massG }) => {
    const name = asked.kitchen.book.foods.get(foodId)?.name ?? foodId;
    return `${name}: ${pantryWords(Math.abs(massG))} ${massG > 0 ? 'back in' : 'out of'} the pantry`;
  });
  return [...pieces, ...food];
}
