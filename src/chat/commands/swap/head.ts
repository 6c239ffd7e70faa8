import type { CommandHead } from '../../command.ts';
import { ALL_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const swapHead: CommandHead = {
  intent: 'swap',
  roles: ALL_ROLES,
  help: {
    line: 'a swap for an ingredient or a need, with all that changes',
    examples: [
      'out of milk',
      'nut-free version of the oat bars',
      'almond butter instead of pb in the oat bars',
    ],
  },
};
