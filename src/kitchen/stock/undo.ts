import { Problem } from '../../nutrition/problem.ts';
import type { Desk, Doing } from './desk.ts';
import type { LedgerEvent } from './ledger.ts';
import { eventOf } from './record-taken.ts';

/**
 * Takes back this person's last entry with another entry; both stay in the ledger.
 * @throws Problem `not_possible` when something recorded later depends on it.
 */
export async function undoLast(desk: Desk, doing: Doing): Promise<LedgerEvent> {
  return desk.ledger.write(async (ledger) => {
    const last = await ledger.lastEventBy(doing.who);
    if (!last) {
      throw new Problem(
        'not_found',
        'You have nothing to undo.',
        'Only your own entries can be undone, the last one first.',
      );
    }
    const movements = await ledger.movementsOf([last.id]);
    const balances = new Map((await ledger.holdings()).map((holding) => [holding.id, holding.pieces]));
    const short = movements.find((movement) => (balances.get(movement.holdingId) ?? 0) - movement.pieces < 0);
    if (short) {
      throw new Problem(
        'not_possible',
        `Some of what you ${last.kind} has been used since, so it cannot be undone.`,
        'Undo the later entries first, or put the number right with "counted 25 oat bars".',
      );
    }
    await ledger.append({
      event: { ...eventOf(ledger, desk, 'undone', doing), reverses: last.id },
      movements: movements.map((movement) => ({ holdingId: movement.holdingId, pieces: -movement.pieces })),
    });
    return last;
  });
}
