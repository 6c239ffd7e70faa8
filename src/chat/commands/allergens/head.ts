import type { CommandHead } from '../../command.ts';
import { ALL_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const allergensHead: CommandHead = {
  intent: 'allergens',
  roles: ALL_ROLES,
  help: {
    line: 'contains, may contain, not known',
    examples: [
      'allergens in the oat bars',
      'can I eat the cherry bars, peanut allergy',
      'what can a nut-free athlete eat',
      'my needs: peanut, vegan',
      'import roster.csv',
    ],
  },
};
