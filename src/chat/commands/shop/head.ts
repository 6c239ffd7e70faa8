import type { CommandHead } from '../../command.ts';
import { KITCHEN_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const shopHead: CommandHead = {
  intent: 'shop',
  roles: KITCHEN_ROLES,
  help: {
    line: 'what to buy, in packages, less what is on hand; and the shopping list',
    examples: [
      'shop for 40 oat bars',
      'shop for 40 oat bars and 24 peanut cocoa bites',
      'shopping list for saturday',
      'shop for 40 oat bars, out of honey',
      'shopping list',
      'add 2 lb honey to the list',
      'take honey off the list',
    ],
  },
};
