import type { CommandHead } from '../../command.ts';
import { KITCHEN_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const traceHead: CommandHead = {
  intent: 'trace',
  roles: KITCHEN_ROLES,
  help: {
    line: 'from a product lot to its batches, and back',
    examples: ['trace lot HW2604A', 'trace oat bars tuesday', 'label B1'],
  },
};
