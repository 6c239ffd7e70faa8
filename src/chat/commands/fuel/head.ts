import type { CommandHead } from '../../command.ts';
import { TEAM_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const fuelHead: CommandHead = {
  intent: 'fuel',
  roles: TEAM_ROLES,
  help: {
    line: 'published ranges, and what here fits',
    examples: ['snack after lift', 'what to eat 2 h before a game', 'nut-free snack between games'],
  },
};
