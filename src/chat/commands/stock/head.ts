import type { CommandHead } from '../../command.ts';
import { TEAM_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const stockHead: CommandHead = {
  intent: 'stock',
  roles: TEAM_ROLES,
  help: {
    line: 'what is there, use first, throw out; the week',
    examples: [
      'stock',
      'how many oat bars are left',
      "what's in fridge b",
      'enough for 30?',
      'what are we low on',
      'week summary',
    ],
  },
};
