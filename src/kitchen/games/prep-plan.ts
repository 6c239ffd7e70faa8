import type { Recipe } from '../../nutrition/recipe.ts';
import { daysBetween, sayDate, sayInstant } from '../time/zone.ts';
import { type Demand, demandOf, startOf } from './prep/demand.ts';
import type { PlanningDesk, PrepPlan } from './prep/plan.ts';
import { HANDS_ON_MIN, type PrepDay, prepDay } from './prep/prep-day.ts';
import { StockPool } from './prep/stock-pool.ts';
import { gameName } from './say-game.ts';

export type { Pack, PlanningDesk, PrepPlan } from './prep/plan.ts';

/** Games this many days apart or less share one batch when its use-by allows: common practice, no source. */
const CLOSE_DAYS = 3;

/** A batch that later games may still join. */
interface Open {
  readonly recipe: Recipe;
  readonly day: PrepDay;
  readonly demands: Supplied[];
}

interface Supplied extends Demand {
  readonly fromStock: number;
  readonly missing: number;
  readonly stockReason?: string;
}

/**
 * What to make for the games to come, and why: pieces needed, minus stock still in date at the game, rounded up to
 * whole slabs; made at the kitchen's hour on the day before, earlier when setting or packing ask for it, off closed
 * days, never so early that the use-by misses the game. Games close together share one batch. Cancelled games and
 * games that have begun get no plan. Earliest prep first.
 */
export function prepPlans(desk: PlanningDesk): readonly PrepPlan[] {
  const { settings } = desk.book;
  const pool = new StockPool(desk.holdings, settings.timeZone);
  const open = new Map<string, Open>();
  const plans: PrepPlan[] = [];
  const close = (batch: Open): void => {
    plans.push(closed(batch, pool, desk));
    open.delete(batch.recipe.id);
  };
  for (const demand of demandsOf(desk)) {
    const { recipe, wanted } = demand;
    if (!recipe || wanted === undefined) {
      plans.push(undecided(demand, desk));
      continue;
    }
    const before = open.get(recipe.id);
    const joins = before !== undefined && mayJoin(before, demand);
    if (before && !joins) close(before);
    const supplied = supply(demand, recipe, wanted, pool);
    if (supplied.missing === 0) {
      plans.push(covered(supplied, recipe, desk));
    } else if (joins) {
      before.demands.push(supplied);
    } else {
      const day = prepDay(recipe, demand.date, demand.packAtMs, settings);
      open.set(recipe.id, { recipe, day, demands: [supplied] });
    }
  }
  for (const batch of [...open.values()]) close(batch);
  return plans.sort(
    (a, b) => a.prepAtMs - b.prepAtMs || (a.gameIds[0] ?? '').localeCompare(b.gameIds[0] ?? ''),
  );
}

function demandsOf({ games, book, nowMs }: PlanningDesk): Demand[] {
  return games
    .filter((game) => game.status === 'planned')
    .map((game) => demandOf(game, book))
    .filter((demand) => (startOf(demand.game) ?? demand.servedMs) > nowMs)
    .sort((a, b) => a.servedMs - b.servedMs || (a.game.id < b.game.id ? -1 : 1));
}

function supply(demand: Demand, recipe: Recipe, wanted: number, pool: StockPool): Supplied {
  const taken = pool.take(recipe.id, wanted, demand.servedMs);
  const good = taken.useBy === undefined ? '' : `, good through ${sayDate(taken.useBy)}`;
  return {
    ...demand,
    fromStock: taken.pieces,
    missing: wanted - taken.pieces,
    ...(taken.pieces > 0 ? { stockReason: `${taken.pieces} of them from stock${good}` } : {}),
  };
}

/** One batch serves both when it is still in date at the later game and the games are close. */
function mayJoin(batch: Open, demand: Demand): boolean {
  const first = batch.demands[0];
  if (!first || daysBetween(first.date, demand.date) > CLOSE_DAYS) return false;
  if (demand.packAtMs < first.packAtMs) return false;
  return batch.day.useBy === undefined || batch.day.useBy >= demand.date;
}

function closed(batch: Open, pool: StockPool, desk: PlanningDesk): PrepPlan {
  const { recipe, day, demands } = batch;
  const first = demands[0] as Supplied;
  const missing = demands.reduce((sum, demand) => sum + demand.missing, 0);
  const slabs = Math.ceil(missing / recipe.yieldPieces);
  const pieces = slabs * recipe.yieldPieces;
  const readyMs = day.prepAtMs + (HANDS_ON_MIN + (recipe.set?.leastMin ?? 0)) * 60_000;
  pool.add(recipe.id, pieces - missing, readyMs, day.useBy);
  const whole = recipe.pan ? 'slab' : 'batch';
  const several = demands.length > 1;
  return {
    gameIds: demands.map(({ game }) => game.id),
    recipeId: recipe.id,
    wanted: demands.reduce((sum, demand) => sum + (demand.wanted ?? 0), 0),
    fromStock: demands.reduce((sum, demand) => sum + demand.fromStock, 0),
    pieces,
    slabs,
    prepAtMs: day.prepAtMs,
    latestStartMs: day.latestStartMs,
    packAtMs: first.packAtMs,
    packs: demands.map(packOf),
    readyByMs: first.packAtMs,
    ...(day.useBy === undefined ? {} : { useBy: day.useBy }),
    reasons: [
      ...(several ? [`one batch for ${demands.length} games within ${CLOSE_DAYS} days`] : []),
      ...demands.flatMap((demand) => reasonsOf(demand, several)),
      `${missing} to make, rounded up to ${slabs} whole ${slabs === 1 ? whole : plural(whole)} of ${recipe.yieldPieces} = ${pieces}`,
      ...day.reasons,
    ],
    conflicts: [...demands.flatMap(({ conflicts }) => conflicts), ...day.conflicts, ...lateness(day, desk)],
  };
}

const plural = (word: string): string => (word === 'batch' ? 'batches' : `${word}s`);

function reasonsOf(demand: Supplied, several: boolean): string[] {
  const name = several ? `${sayDate(demand.date)} ${gameName(demand.game)}: ` : '';
  return [...demand.reasons, ...(demand.stockReason ? [demand.stockReason] : [])].map(
    (reason) => `${name}${reason}`,
  );
}

const packOf = ({ game, wanted, packAtMs }: Demand) => ({ gameId: game.id, pieces: wanted ?? 0, packAtMs });

function lateness(day: PrepDay, { nowMs, book }: PlanningDesk): string[] {
  const zone = book.settings.timeZone;
  if (nowMs > day.latestStartMs) {
    return [`Too late to be set by packing: it had to start by ${sayInstant(day.latestStartMs, zone)}.`];
  }
  return nowMs > day.prepAtMs
    ? [`The usual time has passed: start by ${sayInstant(day.latestStartMs, zone)} at the latest.`]
    : [];
}

/** Stock is enough: nothing is made, it is only packed. */
function covered(demand: Supplied, recipe: Recipe, desk: PlanningDesk): PrepPlan {
  const day = prepDay(recipe, demand.date, demand.packAtMs, desk.book.settings);
  return {
    ...blank(demand, day),
    recipeId: recipe.id,
    fromStock: demand.fromStock,
    reasons: [...reasonsOf(demand, false), 'nothing to make'],
  };
}

/** Not known what or for how many: the plan only asks. */
function undecided(demand: Demand, desk: PlanningDesk): PrepPlan {
  const day = demand.recipe
    ? prepDay(demand.recipe, demand.date, demand.packAtMs, desk.book.settings)
    : { prepAtMs: demand.packAtMs, latestStartMs: demand.packAtMs };
  return {
    ...blank(demand, day),
    ...(demand.recipe ? { recipeId: demand.recipe.id } : {}),
    reasons: demand.reasons,
  };
}

function blank(demand: Demand, day: Pick<PrepDay, 'prepAtMs' | 'latestStartMs'>) {
  return {
    gameIds: [demand.game.id],
    ...(demand.wanted === undefined ? {} : { wanted: demand.wanted }),
    fromStock: 0,
    pieces: 0,
    slabs: 0,
    prepAtMs: day.prepAtMs,
    latestStartMs: day.latestStartMs,
    packAtMs: demand.packAtMs,
    packs: [packOf(demand)],
    readyByMs: demand.packAtMs,
    conflicts: demand.conflicts,
  };
}
