import type { CommandHead } from '../../command.ts';
import { KITCHEN_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const gameHead: CommandHead = {
  intent: 'game',
  roles: KITCHEN_ROLES,
  help: {
    line: 'adds, moves, cancels, imports',
    examples: [
      'game Sat 2pm vs Riverton',
      'game 12/5 away 9am leave 6:30am',
      'game Saturday is now Friday 6pm',
      'import schedule.ics',
    ],
  },
};
