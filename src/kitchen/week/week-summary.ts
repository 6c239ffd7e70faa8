import type { Book } from '../../nutrition/book.ts';
import type { Batch, LedgerView } from '../stock/ledger.ts';
import { addDays, type CalendarDate, type ClockTime, clockTime, instantOf } from '../time/zone.ts';

/** Batches made before the week that may have been served in it: longer than any date mark, freezer days aside. */
const LOOK_BACK_DAYS = 60;

export interface RecipeWeek {
  readonly recipeId: string;
  readonly title: string;
  readonly made: number;
  readonly served: number;
  readonly tossed: number;
  /** Served in the week and nothing left at its end. */
  readonly ranOut: boolean;
}

export interface MissedReading {
  readonly location: string;
  readonly dueMs: number;
}

/** A week in figures: pieces by recipe, and the readings nobody took. */
export interface WeekSummary {
  readonly from: CalendarDate;
  readonly to: CalendarDate;
  readonly recipes: readonly RecipeWeek[];
  readonly missedReadings: readonly MissedReading[];
}

/** Sums up the days from `from` to `to`, both included, in the kitchen's zone, as far as they have passed by `nowMs`. */
export async function weekSummary(
  ledger: LedgerView,
  book: Book,
  days: { readonly from: CalendarDate; readonly to: CalendarDate },
  nowMs: number,
): Promise<WeekSummary> {
  const zone = book.settings.timeZone;
  const startMs = instantOf({ date: days.from, time: '00:00' as ClockTime }, zone);
  const endMs = Math.min(
    nowMs,
    instantOf({ date: addDays(days.to, 1), time: '00:00' as ClockTime }, zone) - 1,
  );
  return {
    ...days,
    recipes: await recipeWeeks(ledger, days.from, startMs, endMs),
    missedReadings: await missedReadings(ledger, book, days, endMs),
  };
}

async function recipeWeeks(
  ledger: LedgerView,
  from: CalendarDate,
  startMs: number,
  endMs: number,
): Promise<RecipeWeek[]> {
  const events = new Map((await ledger.events(startMs, endMs)).map((event) => [event.id, event.kind]));
  const movements = await ledger.movementsOf([...events.keys()]);
  const held = await ledger.holdings();
  const batches = new Map<string, Batch>();
  for (const batch of await ledger.batches({ madeFrom: addDays(from, -LOOK_BACK_DAYS) }))
    batches.set(batch.id, batch);
  for (const { batch } of held) batches.set(batch.id, batch);
  const left = new Set(held.map(({ batch }) => batch.recipeId));

  const weeks = new Map<string, { title: string; made: number; served: number; tossed: number }>();
  for (const { eventId, batchId, pieces } of movements) {
    const batch = batches.get(batchId);
    const kind = events.get(eventId);
    if (!batch || (kind !== 'made' && kind !== 'served' && kind !== 'tossed')) continue;
    const week = weeks.get(batch.recipeId) ?? { title: batch.recipeTitle, made: 0, served: 0, tossed: 0 };
    week[kind] += Math.abs(pieces);
    weeks.set(batch.recipeId, week);
  }
  return [...weeks]
    .map(([recipeId, week]) => ({ recipeId, ...week, ranOut: week.served > 0 && !left.has(recipeId) }))
    .sort((a, b) => b.made + b.served - a.made - a.served || (a.title < b.title ? -1 : 1));
}

/** A reading counts for a time when it was taken in the two hours before it, or after it and before the next time. */
const EARLY_MS = 2 * 3_600_000;

async function missedReadings(
  ledger: LedgerView,
  { settings }: Book,
  { from, to }: { readonly from: CalendarDate; readonly to: CalendarDate },
  endMs: number,
): Promise<MissedReading[]> {
  const { readingTimes, timeZone, locations } = settings;
  const dueTimes: number[] = [];
  for (let date = from; date <= addDays(to, 1); date = addDays(date, 1)) {
    for (const time of [...readingTimes].sort())
      dueTimes.push(instantOf({ date, time: clockTime(time) }, timeZone));
  }
  const readings = await ledger.readings({ fromMs: (dueTimes[0] ?? endMs) - EARLY_MS, toMs: endMs });
  const missed: MissedReading[] = [];
  for (const place of locations.filter(({ kind }) => kind !== 'room')) {
    const taken = readings.filter(({ location }) => location === place.id).map(({ atMs }) => atMs);
    for (const [at, dueMs] of dueTimes.entries()) {
      const nextMs = dueTimes[at + 1];
      if (nextMs === undefined || nextMs > endMs) continue;
      if (!taken.some((atMs) => atMs >= dueMs - EARLY_MS && atMs < nextMs - EARLY_MS))
        missed.push({ location: place.id, dueMs });
    }
  }
  return missed;
}
