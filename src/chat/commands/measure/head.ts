import type { CommandHead } from '../../command.ts';
import { ALL_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const measureHead: CommandHead = {
  intent: 'measure',
  roles: ALL_ROLES,
  help: {
    line: 'convert measures, with or without a food',
    examples: ['16 T = ? cups', '2 Tbs honey in grams', 'half of 3/4 cup', '350 F in C'],
  },
};
