import type { CommandHead } from '../../command.ts';
import { KITCHEN_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const tossedHead: CommandHead = {
  intent: 'tossed',
  roles: KITCHEN_ROLES,
  help: {
    line: 'logs what was thrown out, and why',
    examples: ['tossed 3 oat bars (dropped)', 'toss everything expired', 'tossed batch B3'],
  },
};
