import type { Command } from '../../command.ts';
import { withQuestion } from '../../stock/merged.ts';
import { correct } from './correct.ts';
import { madeHead } from './head.ts';
import { logMade } from './log.ts';
import { move } from './move.ts';
import { opened } from './opened.ts';

/** What came out of the kitchen, what was opened, and what was put elsewhere. */
export const made: Command = {
  ...madeHead,
  answers(asked) {
    const whole = withQuestion(asked);
    const { slots } = whole;
    if (slots.opened === true) return opened(whole);
    if (slots.move === true) return move(whole);
    if (slots.correction === true) return correct(whole);
    return logMade(whole);
  },
};
