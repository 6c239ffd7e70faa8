import type { CommandHead } from '../../command.ts';
import { KITCHEN_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const countedHead: CommandHead = {
  intent: 'counted',
  roles: KITCHEN_ROLES,
  help: {
    line: 'corrects the count to what is there',
    examples: ['counted 25 oat bars', 'counted 8 oat bars in fridge b'],
  },
};
