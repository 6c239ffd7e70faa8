import type { CommandHead } from '../../command.ts';
import { TEAM_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const supplementHead: CommandHead = {
  intent: 'supplement',
  roles: TEAM_ROLES,
  help: {
    line: 'who decides; approved products and lots',
    examples: ['is this pre-workout ok', 'is the vanilla whey ok', 'is lot HW2604A of the vanilla whey ok'],
  },
};
