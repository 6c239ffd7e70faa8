import type { CommandHead } from '../../command.ts';
import { TEAM_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const scheduleHead: CommandHead = {
  intent: 'schedule',
  roles: TEAM_ROLES,
  help: {
    line: 'games, prep and checks of the week, as a list or an .ics file',
    examples: ['schedule', 'when is the next game', 'export schedule'],
  },
};
