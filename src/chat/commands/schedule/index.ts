import type { Outlook } from '../../../kitchen/games/outlook.ts';
import { outlook } from '../../../kitchen/games/outlook.ts';
import type { Answered, Asked, Command } from '../../command.ts';
import { gamesDesk } from '../../games/desk.ts';
import { answerAsk } from './asks.ts';
import { exportSchedule } from './export.ts';
import { scheduleHead } from './head.ts';
import { weekAnswer } from './week.ts';

/** The week's games, preps and checks, and questions about games. */
export const schedule: Command = {
  ...scheduleHead,
  async answers(asked) {
    return answer(asked, await outlook(gamesDesk(asked)));
  },
};

function answer(asked: Asked, seen: Outlook): Answered {
  const { ask, output } = asked.slots;
  if (output === 'ics') return exportSchedule(asked, seen);
  return typeof ask === 'string' ? answerAsk(asked, seen, ask) : weekAnswer(asked, seen);
}
