import type { CommandHead } from '../../command.ts';
import { KITCHEN_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const costHead: CommandHead = {
  intent: 'cost',
  roles: KITCHEN_ROLES,
  help: {
    line: 'what a piece, a batch, a game or an amount costs; prices, waste, budget',
    examples: [
      'cost of 40 oat bars',
      'which is cheaper, oat bars or cherry oat bars',
      'what does saturday cost',
      'price of oats',
      'oats 3.49 for 42 oz',
      'waste in dollars this week',
      'budget left',
    ],
  },
};
