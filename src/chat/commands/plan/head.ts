import type { CommandHead } from '../../command.ts';
import { KITCHEN_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const planHead: CommandHead = {
  intent: 'plan',
  roles: KITCHEN_ROLES,
  help: {
    line: 'the fewest variants that feed everybody, in order, with times and labels',
    examples: ['plan saturday 44 travelling', 'plan saturday 44 travelling 5 nut free 2 coeliac'],
  },
};
