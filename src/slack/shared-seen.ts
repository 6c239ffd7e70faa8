import type { Clock } from '../kitchen/kitchen.ts';
import type { Claims } from '../kitchen/workspaces/workspaces.ts';
import { errorCode } from './errors.ts';
import type { Log } from './log.ts';
import { createSeen, type Seen } from './seen.ts';
import { inTime } from './within.ts';

const SWEEP_EVERY_MS = 10 * 60_000;
/** A memory that takes longer does not answer: the person waits. */
const PATIENCE_MS = 2_000;

/**
 * What any instance of the service has acted on. A memory that does not answer leaves each instance to its own: an answer
 * given twice is better than none, and the ledger books a request once anyway.
 */
export function sharedSeen(claims: Claims, clock: Clock, log: Log): Seen {
  const here = createSeen(clock);
  let sweptMs = clock.nowMs();
  const unremembered = (error: unknown): true => {
    log.warn({ code: errorCode(error) }, 'what was seen could not be shared with other instances');
    return true;
  };
  return {
    async isFirst(key, forMs) {
      if (!(await here.isFirst(key, forMs))) return false;
      const nowMs = clock.nowMs();
      if (nowMs - sweptMs >= SWEEP_EVERY_MS) {
        sweptMs = nowMs;
        void claims.sweep(nowMs).catch(unremembered);
      }
      const [workspace = ''] = key.split(':', 1);
      const claiming = claims.claim({ workspace, key, untilMs: nowMs + forMs }, nowMs);
      return inTime(claiming, PATIENCE_MS).catch(unremembered);
    },
  };
}
