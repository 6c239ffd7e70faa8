import type { CommandHead } from '../../command.ts';
import { KITCHEN_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const servedHead: CommandHead = {
  intent: 'served',
  roles: KITCHEN_ROLES,
  help: {
    line: 'logs what was taken out, first expired first; undo',
    examples: ['served 12 oat bars', 'took out 12 oat bars at 14:00', 'undo'],
  },
};
