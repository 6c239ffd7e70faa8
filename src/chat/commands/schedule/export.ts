import type { Outlook } from '../../../kitchen/games/outlook.ts';
import { prepCalendar } from '../../../kitchen/games/prep-calendar.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked } from '../../command.ts';
import { gamesToCome } from '../../games/which-game.ts';
import { KITCHEN_ROLES } from '../../roles.ts';

/** The schedule as an .ics file: games for the team, with preps and packing for the kitchen. */
export function exportSchedule(asked: Asked, { games, plans }: Outlook): Answered {
  const { kitchen, request } = asked;
  const coming = gamesToCome(asked, games).filter(({ status }) => status === 'planned');
  if (coming.length === 0) {
    throw new Problem(
      'not_found',
      'There is no game to come to export.',
      'Type "game Sat 2pm vs Riverton" first.',
    );
  }
  const shown = KITCHEN_ROLES.includes(request.asker.role) ? plans : [];
  const content = prepCalendar({ games: coming, plans: shown, book: kitchen.book, nowMs: request.nowMs });
  const preps = shown.filter(({ pieces }) => pieces > 0).length;
  const fileName = 'prep-schedule.ics';
  return {
    answer: {
      title: `${fileName}: ${coming.length} ${coming.length === 1 ? 'game' : 'games'}${shown.length > 0 ? `, ${preps} ${preps === 1 ? 'prep' : 'preps'}` : ''}`,
      sections: [
        {
          kind: 'text',
          text: 'Open it with your calendar. Export again after changes: entries move, none doubles.',
        },
      ],
      cautions: [],
      next: [],
      attachments: [{ fileName, mediaType: 'text/calendar', content }],
      audience: 'channel',
      data: { file: fileName, games: coming.length, preps },
    },
  };
}
