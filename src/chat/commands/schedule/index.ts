import type { Outlook } from '../../../kitchen/games/outlook.ts';
import { outlook } from '../../../kitchen/games/outlook.ts';
import type { Answered, Asked, Command } from '../../command.ts';
import { gamesDesk } from '../../games/desk.ts';
import { TEAM_ROLES } from '../../roles.ts';
import { answerAsk } from './asks.ts';
import { exportSchedule } from './export.ts';
import { weekAnswer } from './week.ts';

/** The week's games, preps and checks, and questions about games. */
export const schedule: Command = {
  intent: 'schedule',
  roles: TEAM_ROLES,
  help: {
    line: 'games, prep and checks of the week, as a list or an .ics file',
    examples: ['schedule', 'when is the next game', 'export schedule'],
  },
  async answers(asked) {
    return answer(asked, await outlook(gamesDesk(asked)));
  },
};

function answer(asked: Asked, seen: Outlook): Answered {
  const { ask, output } = asked.slots;
  if (output === 'ics') return exportSchedule(asked, seen);
  return typeof ask === 'string' ? answerAsk(asked, seen, ask) : weekAnswer(asked, seen);
}
