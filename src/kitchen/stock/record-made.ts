import { Problem } from '../../nutrition/problem.ts';
import type { Recipe } from '../../nutrition/recipe.ts';
import { refuseUnchecked } from '../pantry/unchecked-label.ts';
import { type PantryUse, usedByBatches } from '../pantry/uses.ts';
import { addDays, type CalendarDate, dateOf } from '../time/zone.ts';
import { batchFacts } from './batch-facts.ts';
import { daysLeftAt, lastDay } from './date-mark.ts';
import { checkPieces, checkWhen, type Desk, type Doing, eventOf } from './desk.ts';
import type { Batch, Holding, LedgerEvent, LedgerWriter, Opening } from './ledger.ts';
import { type KitchenPlace, placeOf } from './places.ts';
import { overrideOf } from './unapproved.ts';

export interface NewBatch {
  /** The recipe as it was made: with its swaps. */
  readonly recipe: Recipe;
  /** What was different from the card, in words: "sunflower seed butter for peanut butter". */
  readonly variant?: string;
  readonly pieces: number;
  /** Where it stands; without it the first place of the kind its storage asks for. */
  readonly location?: string;
  readonly lots: readonly { readonly foodId: string; readonly lot: string }[];
  /** Why staff let a product pass that the dietitian has not approved. */
  readonly override?: string;
}

export interface Made extends Doing {
  readonly batches: readonly NewBatch[];
}

export interface MadeBatch {
  readonly batch: Batch;
  readonly holding: Holding;
  /** The opened ingredient whose own date mark shortened the use-by. */
  readonly shortenedBy?: Opening;
}

export interface Recorded {
  readonly made: readonly MadeBatch[];
  /** True when this very request was recorded before. */
  readonly again: boolean;
  /** What it took from the pantry. */
  readonly uses: readonly PantryUse[];
}

/**
 * Records batches made together as one entry: contents and allergens frozen as they are now, set-until time, and the
 * use-by date by FDA Food Code 3-501.17 (day made is day 1; the earliest mark of any opened ingredient governs). What
 * went in leaves the pantry.
 */
export async function recordMade(desk: Desk, doing: Made): Promise<Recorded> {
  const atMs = checkWhen(doing.atMs, desk.nowMs);
  const placed = doing.batches.map((made) => {
    checkPieces(made.pieces);
    return { made, place: placeFor(desk, made) };
  });
  return desk.ledger.write(async (ledger) => {
    const { requestKey } = doing;
    const before = requestKey === undefined ? undefined : await ledger.eventByRequest(requestKey);
    if (before) return { made: await madeBefore(ledger, before), again: true, uses: [] };
    await refuseUnchecked(
      ledger,
      desk.book,
      placed.map(({ made }) => made.recipe),
    );
    const event = eventOf(ledger, desk, 'made', { ...doing, atMs });
    const firstCode = await ledger.nextBatchCode();
    const made: MadeBatch[] = [];
    for (const [i, { made: each, place }] of placed.entries()) {
      const opening = await earliestOpening(ledger, each);
      made.push(
        madeBatch(desk, ledger, { event, made: each, place, code: codeAfter(firstCode, i), opening }),
      );
    }
    const batches = made.map(({ batch }) => batch);
    const { movements, uses } = await usedByBatches(ledger, desk.book, batches);
    await ledger.append({
      event,
      batches,
      pantry: movements,
      holdings: made.map(({ holding: { batch, pieces: _balance, ...row } }) => ({
        ...row,
        batchId: batch.id,
      })),
      movements: made.map(({ holding }) => ({ holdingId: holding.id, pieces: holding.pieces })),
    });
    return { made, again: false, uses };
  });
}

const codeAfter = (code: string, more: number): string => `B${Number(code.slice(1)) + more}`;

function placeFor(desk: Desk, { recipe, location }: NewBatch): KitchenPlace {
  const kind = recipe.storage === 'room' ? 'room' : recipe.storage === 'frozen' ? 'freezer' : 'fridge';
  const place = placeOf(desk.book, location, kind);
  if (place.kind !== 'room' || recipe.storage === 'room') return place;
  throw new Problem(
    'not_possible',
    `${recipe.title} are kept cold, and ${place.name} is not.`,
    'Put them in a fridge or freezer and say which, like "in fridge 1".',
  );
}

interface Making {
  readonly event: LedgerEvent;
  readonly made: NewBatch;
  readonly place: KitchenPlace;
  readonly code: string;
  readonly opening: Opening | undefined;
}

function madeBatch(desk: Desk, ledger: LedgerWriter, making: Making): MadeBatch {
  const { event, made, place, opening } = making;
  const { recipe, pieces } = made;
  const madeDate = dateOf(event.atMs, desk.book.settings.timeZone);
  const override = overrideOf(desk.book, recipe, made.override);
  const facts = { ...batchFacts(desk.book, recipe, pieces), ...(override ? { override } : {}) };
  const batch: Batch = {
    id: ledger.newId(),
    code: making.code,
    eventId: event.id,
    recipeId: recipe.id,
    recipeTitle: recipe.title,
    recipeVersion: recipe.version,
    ...(made.variant === undefined ? {} : { variant: made.variant }),
    pieceUnit: recipe.pieceUnit,
    pieces,
    madeMs: event.atMs,
    madeDate,
    ...(recipe.set ? { setUntilMs: event.atMs + recipe.set.leastMin * 60_000 } : {}),
    facts,
    lots: made.lots,
  };
  const own = facts.keepCold ? lastDay(madeDate, facts.days, []) : addDays(madeDate, facts.days - 1);
  const shortened = opening?.useBy !== undefined && opening.useBy < own;
  const useBy = shortened && opening?.useBy !== undefined ? opening.useBy : own;
  const holding: Holding = {
    id: ledger.newId(),
    batch,
    eventId: event.id,
    location: place.id,
    state: place.kind,
    sinceMs: event.atMs,
    sinceDate: madeDate,
    ...dateOrDaysLeft(place.kind, madeDate, useBy),
    thawed: false,
    pieces,
  };
  return { batch, holding, ...(shortened && opening ? { shortenedBy: opening } : {}) };
}

/** In the freezer the mark stands still: what counts is how many days it has left. */
function dateOrDaysLeft(
  kind: KitchenPlace['kind'],
  made: CalendarDate,
  useBy: CalendarDate,
): { readonly useBy?: CalendarDate; readonly daysLeft?: number } {
  return kind === 'freezer' ? { daysLeft: daysLeftAt(made, useBy) } : { useBy };
}

async function madeBefore(ledger: LedgerWriter, event: LedgerEvent): Promise<MadeBatch[]> {
  const held = (await ledger.holdings()).filter((holding) => holding.eventId === event.id);
  return held.map((holding) => ({ batch: holding.batch, holding }));
}

/** The package in use is the lot that was named, else the one opened last; of all, the earliest date governs. */
async function earliestOpening(ledger: LedgerWriter, made: NewBatch): Promise<Opening | undefined> {
  const openings = await ledger.openings(made.recipe.lines.map((line) => line.foodId));
  const lotOf = new Map(made.lots.map((lot) => [lot.foodId, lot.lot.toLowerCase()]));
  const inUse = new Map<string, Opening>();
  for (const opening of openings) {
    const named = lotOf.get(opening.foodId);
    if (named !== undefined && opening.lot !== undefined && opening.lot.toLowerCase() !== named) continue;
    const other = inUse.get(opening.foodId);
    if (!other || other.openedDate <= opening.openedDate) inUse.set(opening.foodId, opening);
  }
  return [...inUse.values()]
    .filter((opening) => opening.useBy !== undefined)
    .sort((a, b) => ((a.useBy ?? '') < (b.useBy ?? '') ? -1 : 1))[0];
}
