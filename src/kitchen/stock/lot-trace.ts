import type { PantryHeld } from '../pantry/pantry.ts';
import { type CalendarDate, dateOf } from '../time/zone.ts';
import type { Batch, LedgerView } from './ledger.ts';

/** Where a maker's lot went, by how sure that is. */
export interface LotTrace {
  /** The foods it is a lot of, by what came and what was said. */
  readonly foodIds: readonly string[];
  /** Whoever made it said this lot. */
  readonly said: readonly Batch[];
  /** Nobody said it: the pantry counted it as taken from this lot, since it was open or the oldest on hand. */
  readonly counted: readonly Batch[];
  /** Made of such a food since the lot came, and nobody said of which lot: not ruled out. */
  readonly possible: readonly Batch[];
  readonly onShelf: readonly PantryHeld[];
}

/** Follows a lot through what was said and what the pantry counted; `undefined` when nobody has ever told of it. */
export async function traceLot(ledger: LedgerView, lot: string, zone: string): Promise<LotTrace | undefined> {
  const said = await ledger.batches({ lot });
  const moved = await ledger.pantryMoved({ lot });
  if (said.length === 0 && moved.length === 0) return undefined;
  const isLot = (other: string | undefined): boolean => other?.toLowerCase() === lot.toLowerCase();
  const foodIds = new Set([
    ...moved.map(({ foodId }) => foodId),
    ...said.flatMap(({ lots }) => lots.flatMap((each) => (isLot(each.lot) ? [each.foodId] : []))),
  ]);
  const isKnown = new Set(said.map(({ id }) => id));
  const taken = new Set(moved.flatMap(({ eventId, massG }) => (massG < 0 ? [eventId] : [])));
  const usesIt = ({ facts }: Batch) => facts.ingredients.some(({ foodId }) => foodIds.has(foodId));
  const counted = (await ledger.batches({ eventIds: [...taken] })).filter(
    (batch) => !isKnown.has(batch.id) && usesIt(batch),
  );
  for (const { id } of counted) isKnown.add(id);
  const since = firstDay([...moved.map(({ atMs }) => atMs), ...said.map(({ madeMs }) => madeMs)], zone);
  const possible = (await ledger.batches({ madeFrom: since })).filter(
    (batch) =>
      !isKnown.has(batch.id) &&
      usesIt(batch) &&
      batch.facts.ingredients.some(
        ({ foodId }) => foodIds.has(foodId) && !batch.lots.some((each) => each.foodId === foodId),
      ),
  );
  const onShelf = (await ledger.pantry()).filter((held) => isLot(held.lot));
  return { foodIds: [...foodIds], said, counted, possible, onShelf };
}

const firstDay = (instants: readonly number[], zone: string): CalendarDate =>
  dateOf(Math.min(...instants), zone);
