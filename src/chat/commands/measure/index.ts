import { Problem } from '../../../nutrition/problem.ts';
import type { Command } from '../../command.ts';
import { slotNumber, slotText } from '../../slot-number.ts';
import type { Slots } from '../../slots.ts';
import { conversionAnswer } from './conversion-answer.ts';
import { measureHead } from './head.ts';
import { temperatureAnswer } from './temperature-answer.ts';

/** Conversions at the bench: spoons, cups, weights, and grams of a food. */
export const measure: Command = {
  ...measureHead,
  async answers(asked) {
    const slots = withLast(
      asked.slots,
      asked.conversation.last?.intent === 'measure' ? asked.conversation.last.slots : {},
    );
    const amount = slotNumber(slots, 'amount');
    const unit = slotText(slots, 'amount_unit');
    if (amount === undefined) {
      throw new Problem(
        'needs_more',
        'How much is to be converted?',
        'Write it like "16 Tbsp in cups" or "2 Tbsp honey in grams".',
      );
    }
    const answer =
      unit === 'f' || unit === 'c'
        ? temperatureAnswer(amount, unit)
        : await conversionAnswer(
            asked.kitchen.book,
            slots,
            amount * (slotNumber(slots, 'factor') ?? 1),
            unit ?? '',
          );
    return { answer, conversation: { ...asked.conversation, last: { intent: 'measure', slots } } };
  },
};

/** "in grams" after a conversion asks for the same amount again. */
const withLast = (said: Slots, last: Slots): Slots =>
  said.amount === undefined ? { ...last, ...said } : said;
