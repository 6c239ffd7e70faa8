import { budgetStanding } from '../../../kitchen/pantry/spending.ts';
import type { Shopping } from '../../../kitchen/shopping/shopping.ts';
import type { Asked } from '../../command.ts';
import { ifKept } from '../../if-kept.ts';
import { dollars } from '../../money.ts';
import { deskOf } from '../../stock/desk.ts';

/** What a trip leaves of the budget; nothing in a kitchen without one, or for a trip that costs nothing. */
export async function budgetLeft(
  asked: Asked,
  { cents, unpriced, others }: Shopping,
): Promise<{ readonly line?: string; readonly data: Record<string, unknown> }> {
  const standing = await ifKept(async () =>
    budgetStanding(deskOf(asked).ledger, asked.kitchen.book, asked.request.nowMs),
  );
  if (!standing || cents === 0) return { data: {} };
  const leftAfter = standing.leftCents - cents;
  const isMost = unpriced.length + others.length + standing.unpriced.length > 0;
  const { budget } = standing;
  const most = isMost ? 'at most ' : '';
  const line =
    leftAfter < 0
      ? `This is ${isMost ? 'at least ' : ''}${dollars(-leftAfter)} over the budget: ${dollars(standing.leftCents)} of ${dollars(budget.cents)} is left this ${budget.per} before it.`
      : `Budget: ${most}${dollars(leftAfter)} of ${dollars(budget.cents)} left this ${budget.per} after it.`;
  return {
    line,
    data: {
      budget: {
        cents: budget.cents,
        per: budget.per,
        leftCents: standing.leftCents,
        leftAfterCents: leftAfter,
      },
    },
  };
}
