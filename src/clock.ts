import type { Clock } from './kitchen/kitchen.ts';
import { Problem } from './nutrition/problem.ts';

/** The clock of this machine. */
export const systemClock: Clock = { nowMs: () => Date.now() };

/**
 * A clock that stands still at `when`: an ISO instant, or a local date-time read in `timeZone` (an hour that the clock
 * change skips or repeats is resolved as RFC 5545 does).
 * @throws Problem `bad_option`
 * @example (await stoppedClock('2026-10-30T14:00', 'America/Chicago')).nowMs() // 1793386800000
 */
export async function stoppedClock(when: string, timeZone: string): Promise<Clock> {
  const { Temporal } = await import('temporal-polyfill');
  const nowMs = instantOf(() => Temporal.Instant.from(when).epochMilliseconds) ?? localOf();
  if (nowMs === undefined) {
    throw new Problem(
      'bad_option',
      `--now cannot be read as a date and time: "${when}".`,
      "Write it like 2026-10-30T14:00 (in the kitchen's zone) or 2026-10-30T19:00:00Z.",
    );
  }
  return { nowMs: () => nowMs };

  function localOf(): number | undefined {
    if (!/\d[T ]\d/i.test(when)) return undefined;
    return instantOf(() => Temporal.PlainDateTime.from(when).toZonedDateTime(timeZone).epochMilliseconds);
  }
}

function instantOf(read: () => number): number | undefined {
  try {
    return read();
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}
