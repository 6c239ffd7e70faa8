import { Problem } from '../../nutrition/problem.ts';
import { firstOut, matches, sayInstead, type Taken, take, type Which } from './choose.ts';
import { checkPieces, checkWhen, type Desk, type Doing } from './desk.ts';
import type { Holding, LedgerEvent, LedgerWriter } from './ledger.ts';
import { mustGo, standingOf } from './usable.ts';

export interface Taking extends Doing {
  readonly which: Which;
  readonly pieces: number | 'all';
  readonly note?: string;
}

export interface TakenPieces {
  readonly taken: readonly Taken[];
  readonly pieces: number;
  /** Pieces of the same kind that can still be served. */
  readonly left: number;
  readonly again: boolean;
}

/** Records what was served: first expired first, never from a batch that is past its date, frozen or still setting. */
export function recordServed(desk: Desk, taking: Taking): Promise<TakenPieces> {
  const { timeZone } = desk.book.settings;
  return recordTaken(desk, 'served', taking, (all) =>
    firstOut(
      all.filter((holding) => standingOf(holding, taking.atMs, timeZone) === 'usable'),
      timeZone,
    ),
  );
}

/** Records what was thrown out: what must go first, then what would expire first. */
export function recordTossed(desk: Desk, taking: Taking): Promise<TakenPieces> {
  const { timeZone } = desk.book.settings;
  return recordTaken(desk, 'tossed', taking, (all) => {
    const gone = all.filter((holding) => mustGo(holding, taking.atMs, timeZone));
    const rest = all.filter((holding) => !gone.includes(holding));
    return [...firstOut(gone, timeZone), ...firstOut(rest, timeZone)];
  });
}

async function recordTaken(
  desk: Desk,
  kind: 'served' | 'tossed',
  taking: Taking,
  order: (holdings: readonly Holding[]) => readonly Holding[],
): Promise<TakenPieces> {
  if (taking.pieces !== 'all') checkPieces(taking.pieces);
  const atMs = checkWhen(taking.atMs, desk.nowMs);
  return desk.ledger.write(async (ledger) => {
    const all = await ledger.holdings();
    const again = await recordedBefore(ledger, taking.requestKey);
    if (again) return { taken: [], pieces: 0, left: leftOf(desk, all, taking.which), again: true };
    const candidates = order(all.filter((holding) => matches(holding, taking.which)));
    const taken = take(candidates, taking.pieces, () => sayInstead(all, taking.which, desk.nowMs, desk.book));
    await ledger.append({
      event: eventOf(ledger, desk, kind, { ...taking, atMs }),
      movements: taken.map(({ holding, pieces }) => ({ holdingId: holding.id, pieces: -pieces })),
    });
    const pieces = taken.reduce((sum, part) => sum + part.pieces, 0);
    return { taken, pieces, left: leftOf(desk, await ledger.holdings(), taking.which), again: false };
  });
}

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
}

/**
 * Records a count by hand. Fewer than the ledger says: the difference is taken first expired first; more: it is
 * added to the batch made last, because somebody forgot to log it there.
 */
export async function recordCounted(desk: Desk, counting: Counting): Promise<Counted> {
  if (counting.pieces !== 0) checkPieces(counting.pieces);
  const atMs = checkWhen(counting.atMs, desk.nowMs);
  return desk.ledger.write(async (ledger) => {
    const all = await ledger.holdings();
    const held = firstOut(
      all.filter((holding) => matches(holding, counting.which)),
      desk.book.settings.timeZone,
    );
    const before = held.reduce((sum, holding) => sum + holding.pieces, 0);
    if (await recordedBefore(ledger, counting.requestKey)) return { before, after: before, taken: [] };
    const difference = counting.pieces - before;
    const newest = [...held].sort((a, b) => b.batch.madeMs - a.batch.madeMs)[0];
    if (difference > 0 && !newest) {
      throw new Problem(
        'not_possible',
        'No batch of that is in stock to add them to.',
        'Log the batch first, like "made 25 oat bars yesterday".',
      );
    }
    const taken = difference < 0 ? take(held, -difference, () => '') : [];
    const added = difference > 0 && newest ? { holding: newest, pieces: difference } : undefined;
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
    return { before, after: counting.pieces, taken, ...(added ? { added } : {}) };
  });
}

/** Builds the event of an action told by a person. */
export function eventOf(
  ledger: LedgerWriter,
  desk: Desk,
  kind: LedgerEvent['kind'],
  doing: Doing & { readonly note?: string },
): LedgerEvent {
  return {
    id: ledger.newId(),
    kind,
    who: doing.who,
    atMs: doing.atMs,
    recordedMs: desk.nowMs,
    ...(doing.requestKey === undefined ? {} : { requestKey: doing.requestKey }),
    ...(doing.note === undefined ? {} : { note: doing.note }),
  };
}

export async function recordedBefore(ledger: LedgerWriter, requestKey: string | undefined): Promise<boolean> {
  return requestKey !== undefined && (await ledger.eventByRequest(requestKey)) !== undefined;
}

function leftOf(desk: Desk, holdings: readonly Holding[], which: Which): number {
  const { timeZone } = desk.book.settings;
  return holdings
    .filter((holding) => matches(holding, which) && standingOf(holding, desk.nowMs, timeZone) === 'usable')
    .reduce((sum, holding) => sum + holding.pieces, 0);
}
