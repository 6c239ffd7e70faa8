import { Problem } from '../../nutrition/problem.ts';
import { firstOut, matches, type Taken, take, type Which } from './choose.ts';
import { checkPieces, checkWhen, type Desk, type Doing, eventOf, recordedBefore } from './desk.ts';
import type { Holding } from './ledger.ts';

export interface Counting extends Doing {
  readonly which: Which;
  /** Pieces that are really there, zero or more. */
  readonly pieces: number;
}

export interface Counted {
  readonly before: number;
  readonly after: number;
  readonly taken: readonly Taken[];
  readonly added?: { readonly holding: Holding; readonly pieces: number };
  /** Pieces of the same kind that the count did not look at: frozen, or out of the fridge. */
  readonly elsewhere: number;
  readonly again: boolean;
}

/**
 * Records a count by hand. Fewer than the ledger says: the difference is taken first expired first; more: it is
 * added to the batch made last, because somebody forgot to log it there. Without a place the count is of what stands
 * in fridges and on shelves; what is frozen or out is left alone.
 */
export async function recordCounted(desk: Desk, counting: Counting): Promise<Counted> {
  if (counting.pieces !== 0) checkPieces(counting.pieces);
  const atMs = checkWhen(counting.atMs, desk.nowMs);
  return desk.ledger.write(async (ledger) => {
    const all = (await ledger.holdings()).filter((holding) => matches(holding, counting.which));
    const held = firstOut(looked(all, counting.which));
    const before = sum(held);
    const elsewhere = sum(all) - before;
    if (await recordedBefore(ledger, counting.requestKey))
      return { before, after: before, taken: [], elsewhere, again: true };
    const difference = counting.pieces - before;
    const taken =
      difference < 0 ? take(held, -difference, { verb: 'counted', what: 'pieces' }, () => '') : [];
    const added = difference > 0 ? { holding: madeLast(held), pieces: difference } : undefined;
    await ledger.append({
      event: eventOf(ledger, desk, 'counted', {
        ...counting,
        atMs,
        note: `counted ${counting.pieces}, ledger ${before}`,
      }),
      movements: [
        ...taken.map(({ holding, pieces }) => ({ holdingId: holding.id, pieces: -pieces })),
        ...(added ? [{ holdingId: added.holding.id, pieces: added.pieces }] : []),
      ],
    });
    return {
      before,
      after: counting.pieces,
      taken,
      elsewhere,
      again: false,
      ...(added ? { added } : {}),
    };
  });
}

const sum = (holdings: readonly Holding[]): number =>
  holdings.reduce((total, holding) => total + holding.pieces, 0);

function looked(all: readonly Holding[], which: Which): readonly Holding[] {
  if (which.places !== undefined || which.code !== undefined) return all;
  const near = all.filter((holding) => holding.state === 'fridge' || holding.state === 'room');
  return near.length > 0 ? near : all;
}

function madeLast(held: readonly Holding[]): Holding {
  const last = [...held].sort((a, b) => b.batch.madeMs - a.batch.madeMs)[0];
  if (last) return last;
  throw new Problem(
    'not_possible',
    'No batch of that is in stock to add them to.',
    'Log the batch first, like "made 25 oat bars yesterday".',
  );
}
