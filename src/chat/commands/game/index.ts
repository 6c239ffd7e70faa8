import type { Answered, Asked, Command } from '../../command.ts';
import { schedule } from '../schedule/index.ts';
import { addGame } from './add.ts';
import { forgetCalendar, listCalendars } from './calendars.ts';
import { cancelGame, changeGame } from './change.ts';
import { gameHead } from './head.ts';
import { importGames } from './import.ts';

/** What is told about games: a new one, a change, a cancellation, a whole calendar. */
export const game: Command = {
  ...gameHead,
  answers(asked) {
    return answer(asked);
  },
};

async function answer(asked: Asked): Promise<Answered> {
  const { slots } = asked;
  switch (slots.action) {
    case 'import':
      return importGames(asked);
    case 'calendars':
      return listCalendars(asked);
    case 'forget':
      return forgetCalendar(asked);
    case 'cancel':
      return cancelGame(asked);
    case 'move':
      return changeGame(asked);
    default:
      return hasSomethingToKeep(slots) ? addGame(asked) : schedule.answers(asked);
  }
}

const hasSomethingToKeep = (slots: Asked['slots']): boolean =>
  ['when', 'opponent', 'home_away', 'departs', 'people', 'recipe'].some((name) => slots[name] !== undefined);
