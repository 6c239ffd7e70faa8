import type { Holding } from '../../kitchen/stock/ledger.ts';
import { placeName } from '../../kitchen/stock/places.ts';
import { sayHolds } from '../../kitchen/stock/say-holds.ts';
import { standingOf } from '../../kitchen/stock/usable.ts';
import { addDays, dateOf, sayDate, sayTime, wallTimeOf } from '../../kitchen/time/zone.ts';
import type { Book } from '../../nutrition/book.ts';
import type { Asked } from '../command.ts';

/** "1 bar", "12 bars". */
export const counted = (count: number, unit: string): string =>
  `${count} ${count === 1 || unit.endsWith('s') ? unit : `${unit}s`}`;

/**
 * Pieces by the recipe's title, as one would say it.
 * @example piecesOf(1, { recipeTitle: 'Oat bars', pieceUnit: 'bar' }) // '1 oat bar'
 */
export function piecesOf(
  count: number,
  { recipeTitle, pieceUnit }: { readonly recipeTitle: string; readonly pieceUnit: string },
): string {
  const said = recipeTitle.charAt(0).toLowerCase() + recipeTitle.slice(1);
  const one = said.toLowerCase().endsWith(`${pieceUnit}s`) ? said.slice(0, -1) : said;
  return `${count} ${count === 1 ? one : said}`;
}

/** "2:30 pm" today, else "Sat Dec 5, 2:30 pm". */
export function clockText(asked: Asked, instantMs: number): string {
  const { timeZone } = asked.kitchen.book.settings;
  const wall = wallTimeOf(instantMs, timeZone);
  const isToday = wall.date === dateOf(asked.request.nowMs, timeZone);
  return isToday ? sayTime(wall.time) : `${sayDate(wall.date)}, ${sayTime(wall.time)}`;
}

/** "B3, Fridge A, use by Thu Nov 5 (tomorrow)": which pieces, where, until when or why not. */
export function batchText(asked: Asked, holding: Holding): string {
  const { book } = asked.kitchen;
  const { batch } = holding;
  const variant = batch.variant === undefined ? [] : [batch.variant];
  return [batch.code, ...variant, placeName(book, holding.location), untilText(asked, holding)].join(', ');
}

/** A holding as a line of a list: "12 oat bars: B3, Fridge A, use by Thu Nov 5". */
export const holdingLine = (asked: Asked, holding: Holding): string =>
  `${piecesOf(holding.pieces, holding.batch)}: ${batchText(asked, holding)}`;

/** Until when these may be served, or what stands in the way. */
export function untilText(asked: Asked, holding: Holding): string {
  const { settings } = asked.kitchen.book;
  const { nowMs } = asked.request;
  const standing = standingOf(holding, nowMs, settings.timeZone);
  if (standing === 'out_too_long') return 'out too long: throw out';
  if (standing === 'expired') return `past ${holding.useBy ? sayDate(holding.useBy) : 'its date'}: throw out`;
  if (holding.state === 'freezer') return frozenText(holding);
  if (standing === 'held') return `held: ${sayHolds(asked.kitchen.book, [holding])}`;
  const thawed = holding.thawed ? ', thawed' : '';
  if (standing === 'setting' && holding.batch.setUntilMs !== undefined)
    return `sets until ${clockText(asked, holding.batch.setUntilMs)}${useByText(asked.kitchen.book, nowMs, holding, ', ')}`;
  if (holding.discardAtMs !== undefined)
    return `serve or throw out by ${clockText(asked, holding.discardAtMs)}`;
  return `${useByText(asked.kitchen.book, nowMs, holding, '')}${thawed}`;
}

function frozenText({ daysLeft }: Holding): string {
  if (daysLeft === undefined) return 'frozen';
  if (daysLeft === 0) return 'frozen on its last day: no days left after thawing';
  return `frozen, ${daysLeft === 1 ? '1 day' : `${daysLeft} days`} left once thawed`;
}

function useByText({ settings }: Book, nowMs: number, { useBy }: Holding, before: string): string {
  if (useBy === undefined) return '';
  const today = dateOf(nowMs, settings.timeZone);
  const near = useBy === today ? ' (today)' : useBy === addDays(today, 1) ? ' (tomorrow)' : '';
  return `${before}use by ${sayDate(useBy)}${near}`;
}

/** A holding for machines. */
export const holdingData = (holding: Holding): Record<string, unknown> => ({
  batch: holding.batch.code,
  recipe: holding.batch.recipeId,
  ...(holding.batch.variant === undefined ? {} : { variant: holding.batch.variant }),
  pieces: holding.pieces,
  location: holding.location,
  madeDate: holding.batch.madeDate,
  ...(holding.useBy === undefined ? {} : { useBy: holding.useBy }),
  ...(holding.discardAtMs === undefined ? {} : { discardAtMs: holding.discardAtMs }),
  ...(holding.daysLeft === undefined ? {} : { daysLeft: holding.daysLeft }),
  ...(holding.holds ? { held: [...new Set(holding.holds.map(({ kind }) => kind))] } : {}),
});

export const LOCAL_CODE = 'Your local health code decides; it may be stricter.';
