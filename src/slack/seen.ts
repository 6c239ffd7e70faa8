import type { Clock } from '../kitchen/kitchen.ts';
import { createExpiringMap } from './expiring-map.ts';

/** What was already acted on, so that a retry, a replay or a double press is not acted on again. */
export interface Seen {
  /** True once for each key within `forMs`; every later call gets false. Several instances may share one memory. */
  isFirst(key: string, forMs: number): Promise<boolean>;
}

/** Remembers in this process. */
export function createSeen(clock: Clock, most = 50_000): Seen {
  const seen = createExpiringMap<true>(clock, most);
  return {
    async isFirst(key, forMs) {
      if (seen.get(key)) return false;
      seen.set(key, true, forMs);
      return true;
    },
  };
}
