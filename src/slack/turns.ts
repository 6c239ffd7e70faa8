/** Waits for a turn of its own. */
export type Turn = () => Promise<void>;

/**
 * Hands out one turn for each round of the event loop: after the work of one, what came in meanwhile is read and
 * acknowledged before the next begins. A plain `setImmediate` would let all that wait go in one round.
 */
export function createTurns(): Turn {
  const waiting: (() => void)[] = [];
  const next = (): void => {
    const go = waiting.shift();
    if (waiting.length > 0) setImmediate(next);
    go?.();
  };
  return () =>
    new Promise((resolve) => {
      waiting.push(resolve);
      if (waiting.length === 1) setImmediate(next);
    });
}
