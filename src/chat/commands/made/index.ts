import type { Command } from '../../command.ts';
import { KITCHEN_ROLES } from '../../roles.ts';
import { withQuestion } from '../../stock/merged.ts';
import { correct } from './correct.ts';
import { logMade } from './log.ts';
import { move } from './move.ts';
import { opened } from './opened.ts';

/** What came out of the kitchen, what was opened, and what was put elsewhere. */
export const made: Command = {
  intent: 'made',
  roles: KITCHEN_ROLES,
  help: {
    line: 'logs a batch, a move, a package opened; gives use-by and a label',
    examples: [
      'made 40 oat bars',
      'made 40 oat bars at 9:30 in fridge a with lot HW2604A of vanilla whey',
      'move 20 oat bars to the freezer',
      'opened 2% milk',
      'made 38 not 40',
    ],
  },
  answers(asked) {
    const whole = withQuestion(asked);
    const { slots } = whole;
    if (slots.opened === true) return opened(whole);
    if (slots.move === true) return move(whole);
    if (slots.correction === true) return correct(whole);
    return logMade(whole);
  },
};
