import type { CommandHead } from '../../command.ts';
import { KITCHEN_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const balanceHead: CommandHead = {
  intent: 'balance',
  roles: KITCHEN_ROLES,
  help: {
    line: 're-balances to targets a piece',
    examples: [
      'oat bars at least 20 g protein',
      'keep 20 g protein under 250 kcal, nut-free, 40 oat bars',
      'balance oat bars at least 20 g protein even if scooped, under 90 cents',
      'oat bars of 300 kcal, how many pieces',
    ],
  },
};
