import type { EventKind } from '../../../kitchen/stock/ledger.ts';
import { type Undone, undoLast } from '../../../kitchen/stock/undo.ts';
import type { Answered, Asked } from '../../command.ts';
import { pantryWords } from '../../pantry/amount.ts';
import { deskOf, doingOf } from '../../stock/desk.ts';
import { entryTime } from '../../stock/taken.ts';
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
  undone: 'undo',
};

/** Takes back the asker's last entry; both entries stay in the ledger. */
export async function undo(asked: Asked): Promise<Answered> {
  if (asked.conversation.last?.intent === 'game') return notAGame(asked);
  const undone = await undoLast(deskOf(asked), doingOf(asked, asked.request.nowMs));
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

/** Right after a game, "undo" means the game: taking back a batch instead would surprise. A second "undo" means the stock. */
function notAGame({ conversation }: Asked): Answered {
  const { last: _game, ...kept } = conversation;
  return {
    answer: {
      title: 'A game is not undone; nothing was taken back.',
      sections: [
        { kind: 'text', text: 'Say how the game is: "cancel saturday game", "saturday game is at 2pm".' },
        { kind: 'text', text: 'For your last entry of the stock, say "undo" once more.' },
      ],
      cautions: [],
      next: ['schedule', 'undo'].map((says) => ({ label: says, says })),
      audience: 'asker',
      data: { undone: false },
    },
    conversation: kept,
  };
}

/** What came back and what left again; a move is both, and shows as the place it is in now. */
function changes(asked: Asked, { changed, pantry }: Undone): string[] {
  const pieces = changed.map(({ holding, pieces }) =>
    pieces > 0
      ? `${piecesOf(pieces, holding.batch)} back in ${holding.batch.code}`
      : `${piecesOf(-pieces, holding.batch)} out of ${holding.batch.code} again`,
  );
  const food = pantry.map(({ foodId, massG }) => {
    const name = asked.kitchen.book.foods.get(foodId)?.name ?? foodId;
    return `${name}: ${pantryWords(Math.abs(massG))} ${massG > 0 ? 'back in' : 'out of'} the pantry`;
  });
  return [...pieces, ...food];
}
