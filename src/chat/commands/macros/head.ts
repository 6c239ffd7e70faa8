import type { CommandHead } from '../../command.ts';
import { ALL_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const macrosHead: CommandHead = {
  intent: 'macros',
  roles: ALL_ROLES,
  help: {
    line: 'any nutrient per piece, per 100 g, of a list',
    examples: [
      'macros oat bar cut into 8',
      'protein in 2 tbsp peanut butter + banana',
      'label for oat bar',
      'compare peanut butter and sunflower butter',
      'sodium in oat bar per 100 g',
    ],
  },
};
