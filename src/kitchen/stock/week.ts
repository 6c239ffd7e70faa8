import type { Book } from '../../nutrition/book.ts';
import type { EventKind, LedgerView } from './ledger.ts';
import { placesInUse, type ReadingGap, readingGaps } from './reading-gaps.ts';
import { sumOf } from './view.ts';

/** One recipe's week. */
export interface RecipeWeek {
  readonly recipeId: string;
  readonly title: string;
  readonly pieceUnit: string;
  readonly made: number;
  readonly served: number;
  readonly tossed: number;
  /** What counts by hand added or took away. */
  readonly counted: number;
  /** When the last piece went out by serving, the latest time; absent when it never ran out. */
  readonly ranOutMs?: number;
  readonly left: number;
}

export interface WeekSummary {
  readonly fromMs: number;
  readonly toMs: number;
  readonly recipes: readonly RecipeWeek[];
  /** Pieces thrown out by the reason that was given. */
  readonly wasteByReason: ReadonlyMap<string, number>;
  readonly readings: number;
  readonly missed: readonly ReadingGap[];
}

/** What was made, served and wasted, what ran out, and which readings were missed, between two instants. */
export async function summarizeWeek(
  ledger: LedgerView,
  book: Book,
  fromMs: number,
  toMs: number,
): Promise<WeekSummary> {
  const events = await ledger.events(fromMs, toMs);
  const byId = new Map(events.map((event) => [event.id, event]));
  const movements = (await ledger.movementsOf(events.map(({ id }) => id))).map((movement) => ({
    ...movement,
    event: byId.get(movement.eventId),
  }));
  const batches = new Map(
    (await ledger.batchesById(movements.map(({ batchId }) => batchId))).map((b) => [b.id, b]),
  );
  const holdings = await ledger.holdings();
  const readings = await ledger.readings({ fromMs, toMs });
  const recipeIds = new Set([...batches.values()].map(({ recipeId }) => recipeId));
  const recipes = [...recipeIds].map((recipeId): RecipeWeek => {
    const own = movements
      .filter(({ batchId }) => batches.get(batchId)?.recipeId === recipeId)
      .sort((a, b) => (a.event?.atMs ?? 0) - (b.event?.atMs ?? 0) || (a.eventId < b.eventId ? -1 : 1));
    const sum = (kind: EventKind) =>
      own.filter(({ event }) => event?.kind === kind).reduce((total, { pieces }) => total + pieces, 0);
    const left = sumOf(holdings.filter(({ batch }) => batch.recipeId === recipeId));
    const batch = [...batches.values()].find((each) => each.recipeId === recipeId);
    const ranOutMs = lastEmptied(own, left);
    return {
      recipeId,
      title: batch?.recipeTitle ?? recipeId,
      pieceUnit: batch?.pieceUnit ?? 'piece',
      made: sum('made') + sum('corrected'),
      served: -sum('served') + 0,
      tossed: -sum('tossed') + 0,
      counted: sum('counted'),
      left,
      ...(ranOutMs === undefined ? {} : { ranOutMs }),
    };
  });
  const wasteByReason = new Map<string, number>();
  for (const { event, pieces } of movements) {
    if (event?.kind !== 'tossed') continue;
    const reason = event.note ?? 'no reason given';
    wasteByReason.set(reason, (wasteByReason.get(reason) ?? 0) - pieces);
  }
  return {
    fromMs,
    toMs,
    recipes: recipes.sort((a, b) => b.made - a.made),
    wasteByReason,
    readings: readings.length,
    missed: readingGaps(book, readings, await placesInUse(ledger), fromMs, toMs),
  };
}

interface Step {
  readonly pieces: number;
  readonly eventId: string;
  readonly event: { readonly kind: EventKind; readonly atMs: number } | undefined;
}

/** Walks back from what is left now to the last time serving left none. */
function lastEmptied(steps: readonly Step[], left: number): number | undefined {
  let balance = left;
  for (const [i, step] of [...steps.entries()].reverse()) {
    const isLastOfEvent = steps[i + 1]?.eventId !== step.eventId;
    if (isLastOfEvent && balance === 0 && step.event?.kind === 'served') return step.event.atMs;
    balance -= step.pieces;
  }
  return undefined;
}
