import type { AllergenMark } from '../../nutrition/allergens.ts';
import type { Food } from '../../nutrition/food.ts';
import { Problem } from '../../nutrition/problem.ts';
import type { Recipe } from '../../nutrition/recipe.ts';
import { type CalendarDate, dateOf } from '../time/zone.ts';
import { daysLeftAt, lastDay, MOST_DAYS } from './date-mark.ts';
import { checkPieces, checkWhen, type Desk, type Doing, placeOf } from './desk.ts';
import type { Batch, BatchFacts, Holding, LedgerWriter, Opening } from './ledger.ts';

export interface Made extends Doing {
  readonly recipe: Recipe;
  /** What was different from the card, in words: "sunflower seed butter for peanut butter". */
  readonly variant?: string;
  readonly pieces: number;
  readonly location?: string;
  readonly lots: readonly { readonly foodId: string; readonly lot: string }[];
}

export interface MadeBatch {
  readonly batch: Batch;
  readonly holding: Omit<Holding, 'batch'>;
  /** The opened ingredient whose own date mark shortened the use-by. */
  readonly shortenedBy?: Opening;
  /** True when this very request was recorded before. */
  readonly again: boolean;
}

/**
 * Records a batch: contents and allergens frozen as they are now, set-until time, and the use-by date by
 * FDA Food Code 3-501.17 (day made is day 1; the earliest mark of any opened ingredient governs).
 */
export async function recordMade(desk: Desk, made: Made): Promise<MadeBatch> {
  const pieces = checkPieces(made.pieces);
  const atMs = checkWhen(made.atMs, desk.nowMs);
  const { recipe } = made;
  const kind = recipe.storage === 'room' ? 'room' : recipe.storage === 'frozen' ? 'freezer' : 'fridge';
  const place = placeOf(desk.book, made.location, kind);
  if (place.kind === 'room' && recipe.storage !== 'room') {
    throw new Problem(
      'not_possible',
      `${recipe.title} are kept cold, and ${place.name} is not.`,
      'Put them in a fridge or freezer and say which, like "in fridge 1".',
    );
  }
  return desk.ledger.write(async (ledger) => {
    const before = made.requestKey === undefined ? undefined : await ledger.eventByRequest(made.requestKey);
    if (before) return madeBefore(ledger, before.id);

    const madeDate = dateOf(atMs, desk.book.settings.timeZone);
    const facts = factsOf(desk, recipe, pieces);
    const opening = await earliestOpening(ledger, made);
    const event = {
      id: ledger.newId(),
      kind: 'made' as const,
      who: made.who,
      atMs,
      recordedMs: desk.nowMs,
      ...(made.requestKey === undefined ? {} : { requestKey: made.requestKey }),
    };
    const batch: Batch = {
      id: ledger.newId(),
      code: await ledger.nextBatchCode(),
      eventId: event.id,
      recipeId: recipe.id,
      recipeTitle: recipe.title,
      recipeVersion: recipe.version,
      ...(made.variant === undefined ? {} : { variant: made.variant }),
      pieceUnit: recipe.pieceUnit,
      pieces,
      madeMs: atMs,
      madeDate,
      ...(recipe.set ? { setUntilMs: atMs + recipe.set.leastMin * 60_000 } : {}),
      facts,
      lots: made.lots,
    };
    const marks: readonly CalendarDate[] = opening?.useBy === undefined ? [] : [opening.useBy];
    const useBy = facts.keepCold ? lastDay(madeDate, facts.days, marks) : undefined;
    const holding = {
      id: ledger.newId(),
      eventId: event.id,
      location: place.id,
      state: place.kind,
      sinceMs: atMs,
      sinceDate: madeDate,
      ...dateOrDaysLeft(place.kind, madeDate, useBy),
      thawed: false,
    };
    await ledger.append({
      event,
      batch,
      holdings: [{ ...holding, batchId: batch.id }],
      movements: [{ holdingId: holding.id, pieces }],
    });
    const shortened =
      opening?.useBy !== undefined && useBy === opening.useBy && useBy < lastDay(madeDate, facts.days, []);
    return {
      batch,
      holding: { ...holding, pieces },
      ...(shortened && opening ? { shortenedBy: opening } : {}),
      again: false,
    };
  });
}

/** In the freezer the mark stands still: what counts is how many days it has left. */
function dateOrDaysLeft(
  kind: 'fridge' | 'freezer' | 'room',
  made: CalendarDate,
  useBy: CalendarDate | undefined,
): { readonly useBy?: CalendarDate; readonly daysLeft?: number } {
  if (useBy === undefined) return {};
  return kind === 'freezer' ? { daysLeft: daysLeftAt(made, useBy) } : { useBy };
}

async function madeBefore(ledger: LedgerWriter, eventId: string): Promise<MadeBatch> {
  const holding = (await ledger.holdings()).find((held) => held.eventId === eventId);
  if (holding) return { batch: holding.batch, holding, again: true };
  throw new Problem('not_possible', 'That batch was logged before.', 'Type "stock" to see what is there.');
}

/** The package in use is the lot that was named, else the one opened last; of all, the earliest date governs. */
async function earliestOpening(ledger: LedgerWriter, made: Made): Promise<Opening | undefined> {
  const openings = await ledger.openings(made.recipe.lines.map((line) => line.foodId));
  const lotOf = new Map(made.lots.map((lot) => [lot.foodId, lot.lot.toLowerCase()]));
  const inUse = new Map<string, Opening>();
  for (const opening of openings) {
    const named = lotOf.get(opening.foodId);
    if (named !== undefined && opening.lot?.toLowerCase() !== named) continue;
    const other = inUse.get(opening.foodId);
    if (!other || other.openedDate <= opening.openedDate) inUse.set(opening.foodId, opening);
  }
  return [...inUse.values()]
    .filter((opening) => opening.useBy !== undefined)
    .sort((a, b) => ((a.useBy ?? '') < (b.useBy ?? '') ? -1 : 1))[0];
}

function factsOf(desk: Desk, recipe: Recipe, pieces: number): BatchFacts {
  const factor = pieces / recipe.yieldPieces;
  const foods: Food[] = [];
  const ingredients = recipe.lines
    .filter((line) => !line.optional)
    .map((line) => {
      const food = desk.book.foods.get(line.foodId);
      if (food) foods.push(food);
      return { foodId: line.foodId, name: food?.name ?? line.foodId, massG: line.massG * factor };
    });
  const keepCold = recipe.storage !== 'room';
  return {
    ingredients,
    contains: marksOf(foods, (food) => food.contains),
    advisory: marksOf(foods, (food) => food.advisory),
    glutenFree: foods.every((food) => food.gluten === 'labelled_gluten_free'),
    vegan: foods.every((food) => food.vegan),
    days: keepCold
      ? Math.min(recipe.shelfLifeDays, desk.book.settings.mostDays, MOST_DAYS)
      : recipe.shelfLifeDays,
    keepCold,
  };
}

function marksOf(
  foods: readonly Food[],
  pick: (food: Food) => readonly AllergenMark[],
): readonly AllergenMark[] {
  const byName = new Map<string, AllergenMark>();
  for (const mark of foods.flatMap(pick)) byName.set(`${mark.allergen} ${mark.species ?? ''}`, mark);
  return [...byName.values()];
}
