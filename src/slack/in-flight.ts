/** Work that was acknowledged and is not finished; a graceful stop waits for it. */
export interface InFlight {
  track(work: Promise<void>): Promise<void>;
  /** Resolves true when all is finished, false when `mostMs` have passed first. */
  drain(mostMs: number): Promise<boolean>;
}

export function createInFlight(): InFlight {
  const running = new Set<Promise<void>>();
  return {
    track(work) {
      running.add(work);
      return work.finally(() => running.delete(work));
    },
    async drain(mostMs) {
      let timer: NodeJS.Timeout | undefined;
      const late = new Promise<boolean>((resolve) => {
        timer = setTimeout(() => resolve(false), mostMs);
      });
      const finished = (async () => {
        while (running.size > 0) await Promise.allSettled(running);
        return true;
      })();
      return Promise.race([finished, late]).finally(() => clearTimeout(timer));
    },
  };
}
