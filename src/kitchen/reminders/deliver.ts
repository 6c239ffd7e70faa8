import { nextAttemptAt } from './backoff.ts';
import { DeliveryFailure, type Messenger } from './messenger.ts';
import type { OutboxMessage, ReminderPlaces } from './reminder.ts';
import type { ReminderQueue } from './reminder-queue.ts';

/** Few enough that a batch ends before its lease, even when every call runs into its time limit. */
const BATCH = 10;
const LEASE_MS = 5 * 60_000;

export interface Delivering {
  readonly queue: ReminderQueue;
  readonly messenger: Messenger;
  readonly places: ReminderPlaces;
  /** The text as it should read now; undefined when there is nothing left to tell. */
  readonly freshBody: (message: OutboxMessage) => Promise<string | undefined>;
  readonly by: string;
  readonly nowMs: number;
  readonly isStopping: () => boolean;
  readonly report: (error: unknown) => void;
}

export interface Delivered {
  readonly sent: number;
  /** Found in the channel: an earlier attempt had arrived. */
  readonly found: number;
  readonly failed: number;
}

type Ended = 'sent' | 'found' | 'failed' | 'withdrawn';
interface Outcome {
  readonly ended: Ended;
  /** The surface asked for quiet until then. */
  readonly pauseUntilMs?: number;
}

/** Sends what waits in the outbox until it is empty, the surface asks for a pause, or the program stops. */
export async function deliverDue(job: Delivering): Promise<Delivered> {
  const count = { sent: 0, found: 0, failed: 0, withdrawn: 0 };
  for (;;) {
    if (job.isStopping()) return count;
    const batch = await job.queue.claimMessages({
      by: job.by,
      nowMs: job.nowMs,
      leaseMs: LEASE_MS,
      most: BATCH,
    });
    if (batch.length === 0) return count;
    for (const [at, waiting] of batch.entries()) {
      const message = placed(waiting, job.places);
      if (job.isStopping()) {
        await job.queue.giveBack(batch.slice(at), job.by, job.nowMs);
        return count;
      }
      const outcome = await deliverOne(message, job);
      count[outcome.ended] += 1;
      if (outcome.pauseUntilMs !== undefined) {
        await job.queue.giveBack(batch.slice(at + 1), job.by, outcome.pauseUntilMs);
        return count;
      }
    }
  }
}

function placed(message: OutboxMessage, places: ReminderPlaces): OutboxMessage {
  const place = places[message.audience];
  return place === undefined ? message : { ...message, place };
}

async function deliverOne(message: OutboxMessage, job: Delivering): Promise<Outcome> {
  try {
    const before = message.maybeSent ? await job.messenger.find(message) : undefined;
    if (before !== undefined) {
      await job.queue.recordSent(message, job.by, job.nowMs, before);
      return { ended: 'found' };
    }
    const tooLate = message.reminder !== undefined && message.reminder.helpsUntilMs < job.nowMs;
    const body = tooLate ? undefined : await job.freshBody(message);
    if (body === undefined) {
      await job.queue.withdraw(message, job.by);
      return { ended: 'withdrawn' };
    }
    const ref = await job.messenger.send({ ...message, body });
    await job.queue.recordSent(message, job.by, job.nowMs, ref);
    return { ended: 'sent' };
  } catch (error) {
    job.report(error);
    if (error instanceof DeliveryFailure) return recordFailure(error, message, job);
    // Not the messenger's word: whether it went is open, so its lease runs out and it is looked for.
    return { ended: 'failed' };
  }
}

async function recordFailure(
  error: DeliveryFailure,
  message: OutboxMessage,
  job: Delivering,
): Promise<Outcome> {
  const { outcome, reason, retryAfterMs } = error.details;
  if (outcome === 'refused') {
    await job.queue.recordRefused(message, job.by, reason);
    return { ended: 'failed' };
  }
  const nextAttemptMs = nextAttemptAt(job.nowMs, message.attempts, retryAfterMs);
  await job.queue.recordRetry(message, job.by, {
    nextAttemptMs,
    maybeSent: outcome === 'unanswered',
    problem: reason,
  });
  return {
    ended: 'failed',
    ...(retryAfterMs === undefined ? {} : { pauseUntilMs: job.nowMs + retryAfterMs }),
  };
}
