import type { PantryMovement } from '../pantry/pantry.ts';
import type { Batch, EventKind, Holding, LedgerView } from './ledger.ts';

/** What became of a batch, from the ledger. */
export interface BatchStory {
  readonly batch: Batch;
  readonly madeBy: string;
  /** As made, corrections included. */
  readonly made: number;
  readonly served: number;
  readonly tossed: number;
  /** What counts by hand added or took away. */
  readonly counted: number;
  readonly left: readonly Holding[];
  /** Lots of its foods that the pantry counted as used, and that nobody said. */
  readonly countedLots: Batch['lots'];
}

/** Tells what became of these batches: who made them, what was served and thrown out, where the rest stands. */
export async function batchStories(ledger: LedgerView, batches: readonly Batch[]): Promise<BatchStory[]> {
  const holdings = await ledger.holdings();
  const stories: BatchStory[] = [];
  for (const batch of batches) {
    const history = await ledger.historyOf(batch.id);
    const undone = new Set(history.flatMap(({ event }) => event.reverses ?? []));
    const standing = history.filter(({ event }) => event.kind !== 'undone' && !undone.has(event.id));
    const sum = (kind: EventKind) =>
      standing.filter(({ event }) => event.kind === kind).reduce((total, { pieces }) => total + pieces, 0);
    stories.push({
      batch,
      madeBy: standing.find(({ event }) => event.kind === 'made')?.event.who ?? 'not known',
      made: sum('made') + sum('corrected'),
      served: -sum('served') + 0,
      tossed: -sum('tossed') + 0,
      counted: sum('counted'),
      left: holdings.filter((holding) => holding.batch.id === batch.id),
      countedLots: lotsCounted(batch, await ledger.pantryMovementsOf([batch.eventId])),
    });
  }
  return stories;
}

/** Batches made by one entry share what it took: a lot counts for each that has such a food in it. */
function lotsCounted(batch: Batch, movements: readonly PantryMovement[]): Batch['lots'] {
  const inIt = new Set(batch.facts.ingredients.map(({ foodId }) => foodId));
  const isSaid = (foodId: string, lot: string) =>
    batch.lots.some((each) => each.foodId === foodId && each.lot.toLowerCase() === lot.toLowerCase());
  return movements.flatMap(({ foodId, lot, massG }) =>
    lot !== undefined && massG < 0 && inIt.has(foodId) && !isSaid(foodId, lot) ? [{ foodId, lot }] : [],
  );
}
