import { Problem } from '../../nutrition/problem.ts';
import { dateOf } from '../time/zone.ts';
import { firstOut, matches, sayInstead, sayWhich, type Taken, take, type Which } from './choose.ts';
import { daysLeftAt, lastDayThawed } from './date-mark.ts';
import { checkPieces, checkWhen, type Desk, type Doing, eventOf, recordedBefore } from './desk.ts';
import type { Holding, HoldingState } from './ledger.ts';
import { placeOf } from './places.ts';
import { refuseHeld } from './say-holds.ts';
import { standingOf } from './usable.ts';

/** FDA Food Code 3-501.19(B): out of temperature control, serve or discard within 4 hours. Elapsed time. */
export const TIME_AS_CONTROL_MS = 4 * 3_600_000;
/** FDA and USDA advice to consumers: 2 hours, 1 hour above 90 °F. For what goes home with people. */
export const CONSUMER_MS = 2 * 3_600_000;
export const CONSUMER_HOT_MS = 1 * 3_600_000;
export const HOT_DAY_F = 90;

export interface MovingItem {
  readonly which: Which;
  readonly pieces: number | 'all';
}

export interface Moving extends Doing, MovingItem {
  /** Other kinds moved with it, in the same entry: all of them, or none. */
  readonly also?: readonly MovingItem[];
  /** A place of the kitchen, or `out`: time is then the control. */
  readonly to: string;
  /** Goes home or to a tailgate with people: the consumer rule, not the code's four hours. */
  readonly consumer?: { readonly airTempF?: number };
}

export interface Moved {
  readonly from: readonly Taken[];
  readonly to: readonly Holding[];
  readonly pieces: number;
  readonly again: boolean;
}

/** Records a move between fridge, freezer, shelf and out. Days used stay used; frozen days are not counted. */
export async function recordMoved(desk: Desk, moving: Moving): Promise<Moved> {
  const items: readonly MovingItem[] = [moving, ...(moving.also ?? [])];
  for (const { pieces } of items) if (pieces !== 'all') checkPieces(pieces);
  const atMs = checkWhen(moving.atMs, desk.nowMs);
  const place = moving.to === 'out' ? undefined : placeOf(desk.book, moving.to, 'fridge');
  return desk.ledger.write(async (ledger) => {
    const all = await ledger.holdings();
    if (await recordedBefore(ledger, moving.requestKey)) return { from: [], to: [], pieces: 0, again: true };
    const from: Taken[] = [];
    for (const item of items) from.push(...takenFor(desk, item, less(all, from), atMs, place?.id ?? 'out'));
    const event = eventOf(ledger, desk, 'moved', { ...moving, atMs, note: `to ${place?.id ?? 'out'}` });
    const to = from.map(({ holding, pieces }) => ({
      ...after(desk, holding, atMs, place?.kind ?? 'out', moving),
      id: ledger.newId(),
      eventId: event.id,
      location: place?.id ?? 'out',
      batch: holding.batch,
      ...(holding.holds ? { holds: holding.holds } : {}),
      pieces,
    }));
    await ledger.append({
      event,
      holdings: to.map(({ batch, pieces: _balance, ...row }) => ({ ...row, batchId: batch.id })),
      movements: [
        ...from.map(({ holding, pieces }) => ({ holdingId: holding.id, pieces: -pieces })),
        ...to.map((holding) => ({ holdingId: holding.id, pieces: holding.pieces })),
      ],
    });
    return { from, to, pieces: from.reduce((sum, part) => sum + part.pieces, 0), again: false };
  });
}

function takenFor(
  desk: Desk,
  { which, pieces }: MovingItem,
  all: readonly Holding[],
  atMs: number,
  to: string,
): readonly Taken[] {
  const named = all.filter((holding) => matches(holding, which));
  const candidates = firstOut(named.filter((holding) => canMove(desk, holding, atMs, to)));
  if (candidates.length === 0) refuseReturn(named);
  if (to === 'out') {
    const held = named.filter((holding) => standingOf(holding, atMs, desk.book.settings.timeZone) === 'held');
    refuseHeld(desk.book, named, candidates, pieces, held);
  }
  return take(candidates, pieces, { verb: 'moved', what: sayWhich(which, desk.book) }, () =>
    sayInstead(all, which, desk.nowMs, desk.book),
  );
}

/** What is there when these pieces are gone. */
function less(all: readonly Holding[], taken: readonly Taken[]): readonly Holding[] {
  if (taken.length === 0) return all;
  const gone = (id: string): number =>
    taken.reduce((sum, part) => sum + (part.holding.id === id ? part.pieces : 0), 0);
  return all
    .map((holding) => ({ ...holding, pieces: holding.pieces - gone(holding.id) }))
    .filter(({ pieces }) => pieces > 0);
}

/**
 * Once on the clock it does not go back into the cold (3-501.19); what must be thrown out is not moved, and what is
 * still setting stays in.
 */
function canMove(desk: Desk, holding: Holding, atMs: number, to: string): boolean {
  const standing = standingOf(holding, atMs, desk.book.settings.timeZone);
  if (standing === 'expired' || standing === 'out_too_long') return false;
  if (to === 'out' && (standing === 'held' || standing === 'setting' || standing === 'not_yet_made'))
    return false;
  return holding.location !== to && (holding.state !== 'out' || !holding.batch.facts.keepCold);
}

/** Said by itself, because people try it and the reason is not in the stock list. */
function refuseReturn(named: readonly Holding[]): void {
  if (named.length === 0 || !named.every(({ state, batch }) => state === 'out' && batch.facts.keepCold))
    return;
  throw new Problem(
    'not_possible',
    'What was taken out on the clock does not go back to the fridge (FDA Food Code model 3-501.19).',
    'Serve it or throw it out by its time; if it was logged by mistake, say "undo".',
  );
}

function after(
  desk: Desk,
  holding: Holding,
  atMs: number,
  state: HoldingState,
  moving: Moving,
): Pick<Holding, 'state' | 'sinceMs' | 'sinceDate' | 'daysLeft' | 'useBy' | 'discardAtMs' | 'thawed'> {
  const date = dateOf(atMs, desk.book.settings.timeZone);
  const base = { state, sinceMs: atMs, sinceDate: date, thawed: holding.thawed };
  const { batch, useBy, daysLeft } = holding;
  const clock = state === 'out' && batch.facts.keepCold ? { discardAtMs: atMs + outFor(moving) } : {};
  if (state === 'room' && batch.facts.keepCold) {
    throw new Problem(
      'not_possible',
      `${batch.recipeTitle} are kept cold.`,
      'To serve them at room temperature say "took out 12 oat bars": that starts the clock.',
    );
  }
  if (holding.state === 'freezer' && daysLeft !== undefined) {
    if (state === 'freezer') return { ...base, sinceDate: holding.sinceDate, daysLeft };
    const thawedUseBy = lastDayThawed(date, holding.sinceDate, daysLeft);
    return { ...base, useBy: thawedUseBy, thawed: true, ...clock };
  }
  if (useBy === undefined) return { ...base, ...clock };
  return state === 'freezer' ? { ...base, daysLeft: daysLeftAt(date, useBy) } : { ...base, useBy, ...clock };
}

function outFor(moving: Moving): number {
  if (!moving.consumer) return TIME_AS_CONTROL_MS;
  return (moving.consumer.airTempF ?? 0) > HOT_DAY_F ? CONSUMER_HOT_MS : CONSUMER_MS;
}
