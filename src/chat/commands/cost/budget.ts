import { budgetStanding } from '../../../kitchen/pantry/spending.ts';
import { sayDate } from '../../../kitchen/time/zone.ts';
import type { Answered, Asked } from '../../command.ts';
import { dollars, unpricedLine } from '../../money.ts';
import { deskOf } from '../../stock/desk.ts';

/** What is left of the kitchen's budget this week or month; spent is what was received. */
export async function budgetAnswer(asked: Asked): Promise<Answered> {
  const { book } = asked.kitchen;
  const { ledger, nowMs } = deskOf(asked);
  const standing = await budgetStanding(ledger, book, nowMs);
  if (!standing) {
    return said(
      'This kitchen has set no budget.',
      ['Set it in kitchen.yaml: budget: {cents: 40000, per: week}.'],
      {
        budget: null,
      },
    );
  }
  const { budget, from, spentCents, leftCents, estimatedCents, unpriced } = standing;
  const missing = unpricedLine(unpriced);
  const spent = `${unpriced.length > 0 ? 'at least ' : ''}${dollars(spentCents)} of ${dollars(budget.cents)} spent since ${sayDate(from)}`;
  const left = unpriced.length > 0 ? `at most ${dollars(leftCents)} left` : `${dollars(leftCents)} left`;
  return said(
    leftCents < 0
      ? `${dollars(-leftCents)} over the budget this ${budget.per}: ${spent}.`
      : `${left} this ${budget.per}: ${spent}.`,
    [
      ...(missing === undefined ? [] : [missing]),
      ...(estimatedCents > 0
        ? [`${dollars(estimatedCents)} of it by package prices: nobody told what was paid.`]
        : []),
      'Spent is what was received, like "received 4 jars peanut butter at 6.99 each".',
    ],
    { budgetCents: budget.cents, per: budget.per, from, spentCents, leftCents, estimatedCents, unpriced },
  );
}

function said(title: string, lines: readonly string[], data: Record<string, unknown>): Answered {
  return {
    answer: {
      title,
      sections: lines.map((text) => ({ kind: 'text', text })),
      cautions: [],
      next: ['shopping list', 'waste in dollars this week'].map((says) => ({ label: says, says })),
      audience: 'channel',
      data,
    },
  };
}
