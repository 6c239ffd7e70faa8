import type { Book } from '../../nutrition/book.ts';
import { firstOut, matches, sayInstead, sayWhich, type Taken, take, type Which } from './choose.ts';
import { checkPieces, checkWhen, type Desk, type Doing, eventOf, recordedBefore } from './desk.ts';
import type { Holding } from './ledger.ts';
import { refuseHeld } from './say-holds.ts';
import { mustGo, type Standing, standingOf } from './usable.ts';

export interface TakingItem {
  readonly which: Which;
  readonly pieces: number | 'all';
}

export interface Taking extends Doing {
  readonly items: readonly TakingItem[];
}

export interface TakenItem {
  readonly which: Which;
  readonly taken: readonly Taken[];
  readonly pieces: number;
  /** Pieces of the same kind that can be served after this. */
  readonly left: number;
}

export interface TakenPieces {
  readonly items: readonly TakenItem[];
  readonly again: boolean;
}

type Order = (holdings: readonly Holding[]) => readonly Holding[];
type Check = (there: readonly Holding[], candidates: readonly Holding[], pieces: number | 'all') => void;

/**
 * Records what was served: first expired first, never from a batch that is past its date, frozen,
 * held or still setting.
 */
export function recordServed(desk: Desk, taking: Taking): Promise<TakenPieces> {
  const { timeZone } = desk.book.settings;
  const as = (standing: Standing) => (holding: Holding) =>
    standingOf(holding, taking.atMs, timeZone) === standing;
  return recordTaken(
    desk,
    'served',
    taking,
    (all) => firstOut(all.filter(as('usable'))),
    (there, usable, pieces) => refuseHeld(desk.book, there, usable, pieces, there.filter(as('held'))),
  );
}

/** Records what was thrown out: what must go first, then what would expire first. */
export function recordTossed(desk: Desk, taking: Taking): Promise<TakenPieces> {
  return recordTaken(desk, 'tossed', taking, goneFirst(taking.atMs, desk.book));
}

/** Records that everything past its date or out too long was thrown out. */
export function recordTossedExpired(desk: Desk, taking: Taking): Promise<TakenPieces> {
  const { timeZone } = desk.book.settings;
  return recordTaken(desk, 'tossed', taking, (all) =>
    firstOut(all.filter((holding) => mustGo(holding, taking.atMs, timeZone))),
  );
}

const goneFirst =
  (atMs: number, { settings: { timeZone } }: Book): Order =>
  (all) => {
    const gone = all.filter((holding) => mustGo(holding, atMs, timeZone));
    const rest = all.filter((holding) => !gone.includes(holding));
    return [...firstOut(gone), ...firstOut(rest)];
  };

async function recordTaken(
  desk: Desk,
  kind: 'served' | 'tossed',
  taking: Taking,
  order: Order,
  check: Check = () => undefined,
): Promise<TakenPieces> {
  for (const { pieces } of taking.items) if (pieces !== 'all') checkPieces(pieces);
  const atMs = checkWhen(taking.atMs, desk.nowMs);
  return desk.ledger.write(async (ledger) => {
    if (await recordedBefore(ledger, taking.requestKey)) return { items: [], again: true };
    let there = await ledger.holdings();
    const items = taking.items.map(({ which, pieces }) => {
      const named = there.filter((holding) => matches(holding, which));
      const candidates = order(named);
      check(named, candidates, pieces);
      const taken = take(candidates, pieces, { verb: kind, what: sayWhich(which, desk.book) }, () =>
        sayInstead(there, which, desk.nowMs, desk.book),
      );
      there = without(there, taken);
      return { which, taken, pieces: taken.reduce((sum, part) => sum + part.pieces, 0) };
    });
    await ledger.append({
      event: eventOf(ledger, desk, kind, { ...taking, atMs }),
      movements: totals(items.flatMap(({ taken }) => taken)),
    });
    const left = items.map((item) => ({ ...item, left: usableLeft(desk, there, item.which, item.taken) }));
    return { items: left, again: false };
  });
}

/** What is there after some was taken. */
function without(holdings: readonly Holding[], taken: readonly Taken[]): readonly Holding[] {
  const gone = new Map(taken.map(({ holding, pieces }) => [holding.id, pieces]));
  return holdings
    .map((holding) => ({ ...holding, pieces: holding.pieces - (gone.get(holding.id) ?? 0) }))
    .filter(({ pieces }) => pieces > 0);
}

/** One movement a holding, however many items took from it. */
function totals(taken: readonly Taken[]): { holdingId: string; pieces: number }[] {
  const sums = new Map<string, number>();
  for (const { holding, pieces } of taken) sums.set(holding.id, (sums.get(holding.id) ?? 0) - pieces);
  return [...sums].map(([holdingId, pieces]) => ({ holdingId, pieces }));
}

/** Of the recipes that were taken from, what can still be served, wherever it stands. */
function usableLeft(desk: Desk, holdings: readonly Holding[], which: Which, taken: readonly Taken[]): number {
  const recipes = new Set(taken.map(({ holding }) => holding.batch.recipeId));
  const { timeZone } = desk.book.settings;
  return holdings
    .filter(
      (holding) =>
        recipes.has(holding.batch.recipeId) &&
        (which.code === undefined || matches(holding, which)) &&
        standingOf(holding, desk.nowMs, timeZone) === 'usable',
    )
    .reduce((sum, holding) => sum + holding.pieces, 0);
}
