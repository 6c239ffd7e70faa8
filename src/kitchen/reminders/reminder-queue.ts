import type { OutboxMessage, Reminder, ReminderAudience } from './reminder.ts';

/** Who claims, and for how long nobody else may. */
export interface Claim {
  /** Unique to one tick of one instance. */
  readonly by: string;
  readonly nowMs: number;
  readonly leaseMs: number;
  readonly most: number;
}

/** How an attempt ended that may be tried again. */
export interface Retry {
  readonly nextAttemptMs: number;
  /** True when no answer came: it may have arrived. */
  readonly maybeSent: boolean;
  readonly problem: string;
}

/**
 * What is due in one workspace, on its way to people. Several instances may work on it at once: every row is given to one
 * of them, every step is recorded only by who holds the row, and a row whose holder died comes back by `sweep`.
 */
export interface ReminderQueue {
  /** Gives back what was claimed by somebody who did not finish in time. */
  sweep(nowMs: number): Promise<number>;
  /** Due reminders that still help, in one transaction; the attempt is counted here, so that a crash shows. */
  claimDue(claim: Claim): Promise<readonly Reminder[]>;
  /** The composed message goes to the outbox and the reminder is queued, both or neither. */
  enqueue(reminder: Reminder, by: string, body: string, nowMs: number): Promise<boolean>;
  /** There is nothing left to tell: what it was about is gone. */
  drop(reminder: Reminder, by: string): Promise<void>;
  /** Due reminders that help nobody any more become missed, and one message an audience says so. */
  reportMissed(
    nowMs: number,
    compose: (audience: ReminderAudience, missed: readonly Reminder[]) => string,
  ): Promise<number>;
  claimMessages(claim: Claim): Promise<readonly OutboxMessage[]>;
  recordSent(message: OutboxMessage, by: string, nowMs: number, ref: string): Promise<boolean>;
  recordRetry(message: OutboxMessage, by: string, retry: Retry): Promise<void>;
  recordRefused(message: OutboxMessage, by: string, problem: string): Promise<void>;
  /** Not tried after all, because the surface asked for a pause. */
  giveBack(messages: readonly OutboxMessage[], by: string, nextAttemptMs: number): Promise<void>;
  /** Came too late to help: the reminder is due again, for the list of what was missed. */
  withdraw(message: OutboxMessage, by: string): Promise<void>;
}

export type ReminderQueues = (workspace: string) => ReminderQueue;
