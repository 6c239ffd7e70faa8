import type { KitchenSettings } from '../../../nutrition/book.ts';
import type { Holding } from '../../stock/ledger.ts';
import { type CalendarDate, type ClockTime, clockTime } from '../../time/zone.ts';
import type { NewReminder } from '../reminder-book.ts';
import { atWall, datesAhead, endOfDay, HOUR_MS, MINUTE_MS } from './horizon.ts';

/** In the afternoon there is still time to serve or freeze what ends today: common practice, no source. */
const LAST_DAY_TIME = '15:00' as ClockTime;
/** The morning check names what must go; this is said only if it is still there two hours later. */
const AFTER_CHECK_MS = 2 * HOUR_MS;
/** Warning before food without temperature control must be thrown out: common practice, no source. */
const OUT_LEAD_MS = 30 * MINUTE_MS;
const OUT_HELPS_MS = 12 * HOUR_MS;

/** What the dates and clocks of the food in stock ask for. What is gone by then is not told: see `compose`. */
export function stockReminders(
  holdings: readonly Holding[],
  settings: KitchenSettings,
  nowMs: number,
): readonly NewReminder[] {
  const cold = holdings.filter((holding) => holding.state !== 'out' && holding.useBy !== undefined);
  const byDate = datesAhead(nowMs, settings.timeZone).flatMap((date) => [
    ...(cold.some((holding) => holding.useBy === date) ? [expiring(date, settings)] : []),
    ...(cold.some((holding) => (holding.useBy ?? date) < date) ? [expired(date, settings)] : []),
  ]);
  return [
    ...byDate.filter((reminder) => reminder.dueMs >= nowMs),
    ...holdings.flatMap((holding) => stillOut(holding, nowMs)),
  ];
}

function expiring(date: CalendarDate, { timeZone }: KitchenSettings): NewReminder {
  return {
    key: `expiring:${date}`,
    kind: 'expiring',
    audience: 'kitchen',
    ...atWall(date, LAST_DAY_TIME, timeZone),
    helpsUntilMs: endOfDay(date, timeZone),
    about: { date },
    planned: true,
  };
}

function expired(date: CalendarDate, { timeZone, stockCheckTime }: KitchenSettings): NewReminder {
  const { dueMs } = atWall(date, clockTime(stockCheckTime), timeZone);
  return {
    key: `expired:${date}`,
    kind: 'expired',
    audience: 'kitchen',
    dueMs: dueMs + AFTER_CHECK_MS,
    helpsUntilMs: endOfDay(date, timeZone),
    about: { date },
    planned: true,
  };
}

/** Twice: while it can still be eaten, and when it must go. */
function stillOut(holding: Holding, nowMs: number): NewReminder[] {
  const { discardAtMs } = holding;
  if (discardAtMs === undefined) return [];
  const told = { kind: 'still_out', audience: 'kitchen', planned: true } as const;
  const soonMs = discardAtMs - OUT_LEAD_MS;
  const both: NewReminder[] = [
    {
      ...told,
      key: `still_out:${holding.id}:soon`,
      dueMs: Math.max(soonMs, nowMs),
      helpsUntilMs: discardAtMs,
      about: { holdingId: holding.id, discardAtMs, stage: 'soon' },
    },
    {
      ...told,
      key: `still_out:${holding.id}:now`,
      dueMs: Math.max(discardAtMs, nowMs),
      helpsUntilMs: discardAtMs + OUT_HELPS_MS,
      about: { holdingId: holding.id, discardAtMs, stage: 'now' },
    },
  ];
  return both.filter((reminder) => reminder.helpsUntilMs > nowMs);
}
