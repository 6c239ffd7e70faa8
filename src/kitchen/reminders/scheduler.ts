import type { Clock } from '../kitchen.ts';
import type { Tick } from './tick.ts';

export interface Scheduler {
  /** Looks once, now; a look that is going on is waited for instead. */
  look(): Promise<void>;
  /** No more looks; the one going on is waited for. */
  stop(): Promise<void>;
}

/**
 * Looks every minute, and once at the start for what fell due while nobody looked. The rhythm is in UTC, where no minute
 * is skipped or repeated; when something is due was worked out before, in the kitchen's zone.
 */
export async function startScheduler(
  tick: Tick,
  clock: Clock,
  report: (error: unknown) => void,
): Promise<Scheduler> {
  const { schedule } = await import('node-cron');
  let going: Promise<void> | undefined;
  const look = (): Promise<void> => {
    going ??= tick(clock.nowMs())
      .then(() => undefined, report)
      .finally(() => {
        going = undefined;
      });
    return going;
  };
  const task = schedule('* * * * *', look, { timezone: 'UTC', noOverlap: true });
  void look();
  return {
    look,
    async stop() {
      await task.destroy();
      await going;
    },
  };
}
