import { Problem } from '../../nutrition/problem.ts';
import { type Desk, type Doing, eventOf } from './desk.ts';
import type { Holding, LedgerEvent } from './ledger.ts';

export interface Undone {
  /** The entry that was taken back. */
  readonly event: LedgerEvent;
  /** Pieces that came back (above zero) or left again, by holding. */
  readonly changed: readonly { readonly holding: Holding; readonly pieces: number }[];
  readonly again: boolean;
}

/**
 * Takes back this person's last entry with another entry; both stay in the ledger.
 * @throws Problem `not_possible` when something recorded later depends on it.
 */
export async function undoLast(desk: Desk, doing: Doing): Promise<Undone> {
  return desk.ledger.write(async (ledger) => {
    const done = doing.requestKey && (await ledger.eventByRequest(doing.requestKey));
    if (done) return { event: done, changed: [], again: true };
    const last = await ledger.lastEventBy(doing.who);
    if (!last) {
      throw new Problem(
        'not_found',
        'You have nothing to undo.',
        'Only your own entries can be undone, the last one first.',
      );
    }
    const movements = await ledger.movementsOf([last.id]);
    const before = new Map((await ledger.holdings()).map((holding) => [holding.id, holding]));
    const short = movements.find(
      (movement) => (before.get(movement.holdingId)?.pieces ?? 0) - movement.pieces < 0,
    );
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
    const now = new Map((await ledger.holdings()).map((holding) => [holding.id, holding]));
    const changed = movements.flatMap(({ holdingId, pieces }) => {
      const holding = now.get(holdingId) ?? before.get(holdingId);
      return holding ? [{ holding, pieces: -pieces }] : [];
    });
    return { event: last, changed, again: false };
  });
}
