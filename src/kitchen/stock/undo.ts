import { Problem } from '../../nutrition/problem.ts';
import { type ScheduleUndone, scheduleReversal } from '../games/undo-schedule.ts';
import type { PantryHeld, PantryMovement } from '../pantry/pantry.ts';
import { type Desk, type Doing, eventOf } from './desk.ts';
import type { EventKind, Holding, LedgerEvent, LedgerWriter } from './ledger.ts';

export interface Undone {
  /** The entry that was taken back. */
  readonly event: LedgerEvent;
  /** Pieces that came back (above zero) or left again, by holding. */
  readonly changed: readonly { readonly holding: Holding; readonly pieces: number }[];
  /** What came back to the pantry (above zero) or left it again. */
  readonly pantry: readonly PantryMovement[];
  /** Present when the entry was of games or of a calendar. */
  readonly schedule?: ScheduleUndone;
  readonly again: boolean;
}

/** The kinds of entry a person named, and what is told when the last one is of another kind. */
export interface Meant {
  readonly kinds: readonly EventKind[];
  readonly otherwise: (last: LedgerEvent) => Problem;
}

/**
 * Takes back this person's last entry with another entry; both stay in the ledger.
 * @param meant what the person said it is; nothing is taken back when it is something else.
 * @throws Problem `not_possible` when something recorded later depends on it.
 */
export async function undoLast(desk: Desk, doing: Doing, meant?: Meant): Promise<Undone> {
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
    if (meant && !meant.kinds.includes(last.kind)) throw meant.otherwise(last);
    const event = { ...eventOf(ledger, desk, 'undone', doing), reverses: last.id };
    if (last.kind !== 'game' && last.kind !== 'calendar') return takeBackStock(ledger, last, event);
    const { entry, undone } = await scheduleReversal(ledger, last, desk.nowMs);
    await ledger.append({ event, schedule: entry });
    return { event: last, changed: [], pantry: [], schedule: undone, again: false };
  });
}

async function takeBackStock(ledger: LedgerWriter, last: LedgerEvent, event: LedgerEvent): Promise<Undone> {
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
    event,
    movements: movements.map((movement) => ({ holdingId: movement.holdingId, pieces: -movement.pieces })),
    pantry: pantry.map(takenBack),
  });
  const now = new Map((await ledger.holdings()).map((holding) => [holding.id, holding]));
  const changed = movements.flatMap(({ holdingId, pieces }) => {
    const holding = now.get(holdingId) ?? before.get(holdingId);
    return holding ? [{ holding, pieces: -pieces }] : [];
  });
  return { event: last, changed, pantry: pantry.map(takenBack), again: false };
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
