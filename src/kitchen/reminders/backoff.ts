const FIRST_MS = 30_000;
const LONGEST_MS = 15 * 60_000;

/**
 * When to try again after `attempts` tries: 30 s, 1 min, 2 min … at most 15 min; later when the surface asked for it.
 * @example nextAttemptAt(0, 3, undefined) // 120000
 */
export function nextAttemptAt(nowMs: number, attempts: number, retryAfterMs: number | undefined): number {
  const doubled = FIRST_MS * 2 ** Math.min(Math.max(attempts, 1) - 1, 10);
  return nowMs + Math.max(Math.min(doubled, LONGEST_MS), retryAfterMs ?? 0);
}
