import { recordReleased } from '../../../kitchen/stock/record-released.ts';
import { sayHolds } from '../../../kitchen/stock/say-holds.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked } from '../../command.ts';
import { deskOf, doingOf } from '../../stock/desk.ts';
import { settled } from '../../stock/merged.ts';
import { batchCalled } from '../../stock/which.ts';
import { LOCAL_CODE } from '../../stock/words.ts';

const MOST_REASON = 200;

/** "release B1, B2: probe read 39F": staff's decision about held batches, kept with its reason. */
export async function release(asked: Asked): Promise<Answered> {
  const { slots, request } = asked;
  const codes = String(slots.release).split(',');
  const reason = String(slots.reason ?? '')
    .trim()
    .slice(0, MOST_REASON);
  if (request.asker.role !== 'staff') {
    throw new Problem(
      'not_allowed',
      'Only staff can release what is held. Nothing was recorded.',
      'Ask staff; until then keep it apart and serve none of it.',
    );
  }
  if (reason === '') {
    throw new Problem(
      'needs_more',
      'A release needs a reason that is kept. Nothing was recorded.',
      `Write it like "release ${codes.join(', ')}: probe read 39F, door open 5 min".`,
    );
  }
  const desk = deskOf(asked);
  for (const code of codes) await batchCalled(desk, code);
  const { held, again } = await recordReleased(desk, {
    ...doingOf(asked, request.nowMs),
    codes,
    note: reason,
  });
  const why = sayHolds(asked.kitchen.book, held);
  const news = held.some(({ labelNews }) => labelNews !== undefined);
  return {
    answer: {
      title: again
        ? 'Already recorded; nothing was recorded twice.'
        : `Released by staff: ${codes.join(', ')}. Reason kept: ${reason}.`,
      sections: why === '' ? [] : [{ kind: 'text', text: `It was held: ${why}.` }],
      cautions: [
        `I cannot tell whether it is fit to serve: that is your decision, and it is on record. ${LOCAL_CODE}`,
        ...(news
          ? [
              'What the new label names stays on its label and counts against needs: write new container labels.',
            ]
          : []),
      ],
      next: ['undo', 'stock'].map((says) => ({ label: says, says })),
      audience: 'channel',
      data: { released: again ? [] : codes, reason, logged: !again },
    },
    conversation: settled(asked, 'served'),
  };
}
