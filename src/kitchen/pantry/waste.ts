import type { Book } from '../../nutrition/book.ts';
import { centsOf } from '../../nutrition/cost/cost.ts';
import type { Batch, LedgerView } from '../stock/ledger.ts';
import { addDays, type CalendarDate, dateOf } from '../time/zone.ts';
import { openedLeft } from './opened-left.ts';

/** One thing thrown out, or past its date, with what its ingredients cost at the prices in force. */
export interface WasteLine {
  readonly what: string;
  readonly pieces?: number;
  readonly massG?: number;
  readonly reason?: string;
  /** Whole cents; a lower bound when `unpriced` is not empty. */
  readonly cents: number;
  readonly unpriced: readonly string[];
}

/** An opened package of which at most this is left. */
export interface OpenedLine extends WasteLine {
  readonly massG: number;
  /** Its last day. */
  readonly useBy: CalendarDate;
}

export interface Waste {
  readonly tossed: readonly WasteLine[];
  readonly tossedCents: number;
  /** Opened packages past their date with something left on the shelf: at most this. */
  readonly pastDate: readonly OpenedLine[];
  readonly pastDateCents: number;
  /** Opened packages whose last day is today or tomorrow: waste unless they are used. */
  readonly endsSoon: readonly OpenedLine[];
  readonly endsSoonCents: number;
}

/** What was thrown out between two instants, and what lies open past its date now, or is about to. */
export async function wasteBetween(
  ledger: LedgerView,
  book: Book,
  fromMs: number,
  toMs: number,
  nowMs: number,
): Promise<Waste> {
  const events = (await ledger.events(fromMs, toMs)).filter(({ kind }) => kind === 'tossed');
  const ids = events.map(({ id }) => id);
  const reasons = new Map(events.map(({ id, note }) => [id, note]));
  const pieces = await ledger.movementsOf(ids);
  const batches = new Map(
    (await ledger.batchesById(pieces.map(({ batchId }) => batchId))).map((batch) => [batch.id, batch]),
  );
  const reasonOf = (eventId: string) => {
    const reason = reasons.get(eventId);
    return reason === undefined ? {} : { reason };
  };
  const tossed = [
    ...pieces.flatMap((movement) => {
      const batch = batches.get(movement.batchId);
      return batch ? [{ ...ofBatch(book, batch, -movement.pieces), ...reasonOf(movement.eventId) }] : [];
    }),
    ...(await ledger.pantryMovementsOf(ids)).map((movement) => ({
      ...ofFood(book, movement.foodId, -movement.massG),
      ...reasonOf(movement.eventId),
    })),
  ];
  const today = dateOf(nowMs, book.settings.timeZone);
  const opened = await openedLines(ledger, book);
  const pastDate = opened.filter(({ useBy }) => useBy < today);
  const endsSoon = opened.filter(({ useBy }) => useBy >= today && useBy <= addDays(today, 1));
  return {
    tossed,
    tossedCents: sumOf(tossed),
    pastDate,
    pastDateCents: sumOf(pastDate),
    endsSoon,
    endsSoonCents: sumOf(endsSoon),
  };
}

const sumOf = (lines: readonly WasteLine[]): number => lines.reduce((sum, { cents }) => sum + cents, 0);

function ofBatch(book: Book, batch: Batch, pieces: number): WasteLine {
  const share = pieces / batch.pieces;
  let cents = 0;
  const unpriced = new Set<string>();
  for (const { foodId, name, massG } of batch.facts.ingredients) {
    const food = book.foods.get(foodId);
    const value = food && centsOf(food, massG * share);
    if (value === undefined) unpriced.add(name);
    else cents += value;
  }
  return {
    what: `${batch.recipeTitle} ${batch.code}`,
    pieces,
    cents: Math.round(cents),
    unpriced: [...unpriced],
  };
}

function ofFood(book: Book, foodId: string, massG: number): WasteLine {
  const food = book.foods.get(foodId);
  const value = food && centsOf(food, massG);
  const what = food?.name ?? foodId;
  return { what, massG, cents: Math.round(value ?? 0), unpriced: value === undefined ? [what] : [] };
}

/** Opened packages that have a date and of which something is left, the first to end on top. */
export async function openedLines(ledger: LedgerView, book: Book): Promise<OpenedLine[]> {
  const opened = await openedLeft(ledger, book);
  return opened
    .flatMap(({ foodId, massG, useBy }) =>
      useBy === undefined ? [] : [{ ...ofFood(book, foodId, massG), massG, useBy }],
    )
    .sort((a, b) => (a.useBy < b.useBy ? -1 : 1));
}
