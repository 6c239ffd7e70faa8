import type { Answered, Asked, Command } from '../../command.ts';
import { KITCHEN_ROLES } from '../../roles.ts';
import { schedule } from '../schedule/index.ts';
import { addGame } from './add.ts';
import { forgetCalendar, listCalendars } from './calendars.ts';
import { cancelGame, changeGame } from './change.ts';
import { importGames } from './import.ts';

/** What is told about games: a new one, a change, a cancellation, a whole calendar. */
export const game: Command = {
  intent: 'game',
  roles: KITCHEN_ROLES,
  help: {
    line: 'adds, moves or cancels a game, or imports a calendar',
    examples: [
      'game Sat 2pm vs Riverton',
      'game 12/5 away 9am leave 6:30am',
      'game Saturday is now Friday 6pm',
      'import schedule.ics',
    ],
  },
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
