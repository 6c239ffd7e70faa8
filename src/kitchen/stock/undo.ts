import { Problem } from '../../nutrition/problem.ts';
import type { PantryHeld, PantryMovement } from '../pantry/pantry.ts';
import { type Desk, type Doing, eventOf } from './desk.ts';
import type { Holding, LedgerEvent } from './ledger.ts';

export interface Undone {
  /** The entry that was taken back. */
  readonly event: LedgerEvent;
  /** Pieces that came back (above zero) or left again, by holding. */
  readonly changed: readonly { readonly holding: Holding; readonly pieces: number }[];
  /** What came back to the pantry (above zero) or left it again. */
  readonly pantry: readonly PantryMovement[];
  readonly again: boolean;
}

/**
 * Takes back this person's last entry with another entry; both stay in the ledger.
 * @throws Problem `not_possible` when something recorded later depends on it.
 */
export async function undoLast(desk: Desk, doing: Doing): Promise<Undone> {
  return desk.ledger.write(async (ledger) => {
    const done = doing.requestKey && (await ledger.eventByRequest(doing.requestKey));
    if (done) return { event: done, changed: [], pantry: [], again: true };
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
    const pantry = await ledger.pantryMovementsOf([last.id]);
    if (short || isUsed(await ledger.pantry(), pantry)) {
      throw new Problem(
        'not_possible',
        `Some of what you ${last.kind} has been used since, so it cannot be undone.`,
        'Undo the later entries first, or put the number right with "counted 25 oat bars".',
      );
    }
    await ledger.append({
      event: { ...eventOf(ledger, desk, 'undone', doing), reverses: last.id },
      movements: movements.map((movement) => ({ holdingId: movement.holdingId, pieces: -movement.pieces })),
      pantry: pantry.map(takenBack),
    });
    const now = new Map((await ledger.holdings()).map((holding) => [holding.id, holding]));
    const changed = movements.flatMap(({ holdingId, pieces }) => {
      const holding = now.get(holdingId) ?? before.get(holdingId);
      return holding ? [{ holding, pieces: -pieces }] : [];
    });
    return { event: last, changed, pantry: pantry.map(takenBack), again: false };
  });
}

const takenBack = ({ foodId, lot, massG }: PantryMovement): PantryMovement => ({
  foodId,
  massG: -massG,
  ...(lot === undefined ? {} : { lot }),
});

/** Whether some of what these movements brought has left the shelf since; below a milligram is rounding. */
const isUsed = (held: readonly PantryHeld[], movements: readonly PantryMovement[]): boolean =>
  movements.some(({ foodId, lot, massG }) => {
    const there = held.find((each) => each.foodId === foodId && each.lot === lot)?.massG ?? 0;
    return there - massG < -0.0005;
  });
