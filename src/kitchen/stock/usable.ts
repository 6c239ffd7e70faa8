import { type CalendarDate, dateOf } from '../time/zone.ts';
import type { Holding } from './ledger.ts';

/** Why pieces may or may not be served now. */
export type Standing = 'usable' | 'not_yet_made' | 'setting' | 'expired' | 'frozen' | 'out_too_long' | 'held';

/** How a holding stands at an instant, in the kitchen's zone. A past date wins over everything else. */
export function standingOf(holding: Holding, nowMs: number, zone: string): Standing {
  if (holding.discardAtMs !== undefined && nowMs >= holding.discardAtMs) return 'out_too_long';
  if (holding.batch.madeMs > nowMs) return 'not_yet_made';
  if (holding.state === 'freezer') return 'frozen';
  if (holding.useBy !== undefined && dateOf(nowMs, zone) > holding.useBy) return 'expired';
  if (holding.holds?.some(({ sinceMs }) => sinceMs <= nowMs)) return 'held';
  if (holding.batch.setUntilMs !== undefined && nowMs < holding.batch.setUntilMs) return 'setting';
  return 'usable';
}

/** Pieces that will still be in date and set at a later instant: in cold store or frozen, not out on the clock. */
export function usableAt(holding: Holding, laterMs: number, zone: string): boolean {
  return holding.state !== 'out' && standingOf(holding, laterMs, zone) === 'usable';
}

/** What must be thrown out now. */
export function mustGo(holding: Holding, nowMs: number, zone: string): boolean {
  const standing = standingOf(holding, nowMs, zone);
  return standing === 'expired' || standing === 'out_too_long';
}

/** Whether its last day is this date. */
export function lastsUntil(holding: Holding, date: CalendarDate): boolean {
  return holding.useBy === date;
}
