import { within } from './within.ts';

/** Work that was acknowledged and is not finished; a graceful stop waits for it. */
export interface InFlight {
  /** `what` it is, in the word a stop names it by when it is not finished. */
  track(work: Promise<void>, what: string): Promise<void>;
  /** Resolves true when all is finished, false when `mostMs` have passed first. */
  drain(mostMs: number): Promise<boolean>;
  /** How many of what are not finished. */
  unfinished(): Readonly<Record<string, number>>;
}

export function createInFlight(): InFlight {
  const running = new Map<Promise<void>, string>();
  const finished = async (): Promise<void> => {
    while (running.size > 0) await Promise.allSettled(running.keys());
  };
  return {
    track(work, what) {
      running.set(work, what);
      return work.finally(() => running.delete(work));
    },
    drain: (mostMs) => within(mostMs, finished()),
    unfinished() {
      const counts: Record<string, number> = {};
      for (const what of running.values()) counts[what] = (counts[what] ?? 0) + 1;
      return counts;
    },
  };
}
