import type { Book, KitchenBudget } from '../../nutrition/book.ts';
import { centsOf } from '../../nutrition/cost/cost.ts';
import type { LedgerView } from '../stock/ledger.ts';
import {
  addDays,
  type CalendarDate,
  calendarDate,
  clockTime,
  dateOf,
  instantOf,
  weekdayOf,
} from '../time/zone.ts';

/** What a budget leaves in its week or month so far. Money in whole cents. */
export interface BudgetStanding {
  readonly budget: KitchenBudget;
  readonly from: CalendarDate;
  readonly spentCents: number;
  /** Below zero when more was spent. */
  readonly leftCents: number;
  /** Foods that came without a price and that have none on file: more was spent than is known. */
  readonly unpriced: readonly string[];
  /** Cents of `spentCents` that were worked out from package prices, because nobody told what was paid. */
  readonly estimatedCents: number;
}

/** Spent is what was received since Monday or the first of the month; `undefined` without a budget. */
export async function budgetStanding(
  ledger: LedgerView,
  book: Book,
  nowMs: number,
): Promise<BudgetStanding | undefined> {
  const { budget, timeZone } = book.settings;
  if (!budget) return undefined;
  const from = startOf(budget.per, dateOf(nowMs, timeZone));
  const spent = await spentBetween(
    ledger,
    book,
    instantOf({ date: from, time: clockTime('00:00') }, timeZone),
    nowMs + 1,
  );
  return { budget, from, ...spent, leftCents: budget.cents - spent.spentCents };
}

/** The Monday, or the first of the month, that a day is in. */
export const startOf = (per: 'week' | 'month', today: CalendarDate): CalendarDate =>
  per === 'week' ? addDays(today, 1 - weekdayOf(today)) : calendarDate(`${today.slice(0, 7)}-01`);

/** What was paid for what came between two instants. */
export async function spentBetween(ledger: LedgerView, book: Book, fromMs: number, toMs: number) {
  const deliveries = (await ledger.events(fromMs, toMs)).filter(({ kind }) => kind === 'received');
  const movements = await ledger.pantryMovementsOf(deliveries.map(({ id }) => id));
  let paidCents = 0;
  let estimated = 0;
  const unpriced = new Set<string>();
  for (const { foodId, massG, cents } of movements) {
    const food = book.foods.get(foodId);
    const value = food && centsOf(food, massG);
    if (cents !== undefined) paidCents += cents;
    else if (value === undefined) unpriced.add(food?.name ?? foodId);
    else estimated += value;
  }
  const estimatedCents = Math.round(estimated);
  return { spentCents: paidCents + estimatedCents, estimatedCents, unpriced: [...unpriced] };
}
