import type { CommandHead } from '../../command.ts';
import { ALL_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const allergensHead: CommandHead = {
  intent: 'allergens',
  roles: ALL_ROLES,
  help: {
    line: 'what a recipe contains, what a label advises, what is not known',
    examples: [
      'allergens in the oat bars',
      'can I eat the cherry bars, peanut allergy',
      'what can a nut-free athlete eat',
    ],
  },
};
