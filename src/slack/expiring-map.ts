import type { Clock } from '../kitchen/kitchen.ts';

/** Remembers values for a while; bounded, the oldest goes first. */
export interface ExpiringMap<V> {
  get(key: string): V | undefined;
  set(key: string, value: V, forMs: number): void;
  forget(key: string): void;
}

/** @example createExpiringMap<string>(clock, 1000) */
export function createExpiringMap<V>(clock: Clock, most: number): ExpiringMap<V> {
  const entries = new Map<string, { value: V; untilMs: number }>();
  return {
    get(key) {
      const entry = entries.get(key);
      if (!entry || entry.untilMs > clock.nowMs()) return entry?.value;
      entries.delete(key);
      return undefined;
    },
    forget: (key) => void entries.delete(key),
    set(key, value, forMs) {
      entries.delete(key);
      entries.set(key, { value, untilMs: clock.nowMs() + forMs });
      const oldest = entries.keys().next();
      if (entries.size > most && !oldest.done) entries.delete(oldest.value);
    },
  };
}
