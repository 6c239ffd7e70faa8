import type { Book } from '../../nutrition/book.ts';
import { Problem } from '../../nutrition/problem.ts';
import { type CalendarDate, sayDate, sayInstant } from '../time/zone.ts';
import type { Holding } from './ledger.ts';
import { type Standing, standingOf } from './usable.ts';

/** Which pieces are meant: of a recipe, of a named batch, made on a day, in a place. */
export interface Which {
  readonly recipeId?: string;
  readonly code?: string;
  readonly madeDate?: CalendarDate;
  /** Ids of places, or `out`. */
  readonly places?: readonly string[];
  readonly pieceUnit?: string;
}

export interface Taken {
  readonly holding: Holding;
  readonly pieces: number;
}

export function matches(holding: Holding, which: Which): boolean {
  return (
    (which.recipeId === undefined || holding.batch.recipeId === which.recipeId) &&
    (which.code === undefined || holding.batch.code.toLowerCase() === which.code.toLowerCase()) &&
    (which.madeDate === undefined || holding.batch.madeDate === which.madeDate) &&
    (which.places === undefined || which.places.includes(holding.location)) &&
    (which.pieceUnit === undefined || holding.batch.pieceUnit === which.pieceUnit)
  );
}

/**
 * Takes pieces from holdings in the order given (first expired, first out); never more than there are.
 * @throws Problem `not_possible` that says what is there instead.
 */
export function take(
  holdings: readonly Holding[],
  pieces: number | 'all',
  doing: { readonly verb: 'served' | 'tossed' | 'moved' | 'counted'; readonly what: string },
  instead: () => string,
): readonly Taken[] {
  const there = holdings.reduce((sum, holding) => sum + holding.pieces, 0);
  const wanted = pieces === 'all' ? there : pieces;
  if (wanted > there || there === 0) {
    throw new Problem(
      'not_possible',
      there === 0
        ? `No ${doing.what} can be ${doing.verb} now; nothing was logged.`
        : `Only ${there} ${doing.what} can be ${doing.verb}, not ${wanted}; nothing was logged.`,
      instead(),
    );
  }
  const taken: Taken[] = [];
  let left = wanted;
  for (const holding of holdings) {
    if (left === 0) break;
    const from = Math.min(left, holding.pieces);
    taken.push({ holding, pieces: from });
    left -= from;
  }
  return taken;
}

/** What is meant, in words: "oat bars", "pieces of B3". */
export function sayWhich({ code, recipeId, pieceUnit }: Which, book: Book): string {
  if (code !== undefined) return `pieces of ${code}`;
  if (recipeId !== undefined) return book.recipes.get(recipeId)?.title.toLowerCase() ?? recipeId;
  return pieceUnit === undefined ? 'pieces' : `${pieceUnit}s`;
}

/** What is on the clock first, the shortest first; then by last day, then what was made first. */
export function firstOut(holdings: readonly Holding[]): readonly Holding[] {
  const rank = (holding: Holding): string => holding.useBy ?? '9999-12-31';
  return [...holdings].sort(
    (a, b) =>
      Number(a.state !== 'out') - Number(b.state !== 'out') ||
      (a.discardAtMs ?? Number.MAX_SAFE_INTEGER) - (b.discardAtMs ?? Number.MAX_SAFE_INTEGER) ||
      rank(a).localeCompare(rank(b)) ||
      a.batch.madeMs - b.batch.madeMs,
  );
}

const WHY: Record<Exclude<Standing, 'usable'>, string> = {
  not_yet_made: 'made after that time',
  setting: 'still setting',
  expired: 'past its date: throw it out',
  frozen: 'in the freezer: thaw it first',
  held: 'held, serve none of it',
  out_too_long: 'out of the fridge too long: throw it out',
};

/** One line a holding: how many, which batch, where, and why it cannot be used now if it cannot. */
export function sayHolding(holding: Holding, nowMs: number, book: Book): string {
  const { timeZone } = book.settings;
  const standing = standingOf(holding, nowMs, timeZone);
  const { batch } = holding;
  const variant = batch.variant === undefined ? '' : `, ${batch.variant}`;
  const parts = [
    `${holding.pieces} ${batch.recipeTitle} (${batch.code}, made ${sayDate(batch.madeDate)}${variant})`,
  ];
  if (standing !== 'usable') parts.push(WHY[standing]);
  if (standing === 'setting' && batch.setUntilMs !== undefined)
    parts.push(`until ${sayInstant(batch.setUntilMs, timeZone)}`);
  else if (standing === 'usable' && holding.discardAtMs !== undefined) {
    parts.push(`out: use or throw out by ${sayInstant(holding.discardAtMs, timeZone)}`);
  } else if (standing === 'usable' && holding.useBy !== undefined)
    parts.push(`use by ${sayDate(holding.useBy)}`);
  return parts.join(', ');
}

/** For an error: what of this kind there is, or what else there is. */
export function sayInstead(holdings: readonly Holding[], which: Which, nowMs: number, book: Book): string {
  const same = holdings.filter((holding) => matches(holding, which));
  const found = same.length > 0 ? same : holdings;
  const shown = found.slice(0, 3).map((holding) => sayHolding(holding, nowMs, book));
  if (found.length > 3) shown.push(`and ${found.length - 3} more`);
  if (shown.length === 0) return 'Nothing is in stock. Log what was made, like "made 40 oat bars".';
  return `In stock: ${shown.join('; ')}.`;
}
