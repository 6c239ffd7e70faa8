import type { CommandHead } from '../../command.ts';
import { KITCHEN_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const madeHead: CommandHead = {
  intent: 'made',
  roles: KITCHEN_ROLES,
  help: {
    line: 'logs a batch, a move, an opened package',
    examples: [
      'made 40 oat bars',
      'made 40 oat bars at 9:30 in fridge a with lot HW2604A of vanilla whey',
      'move 20 oat bars to the freezer',
      'opened 2% milk',
      'made 38 not 40',
    ],
  },
};
