import type { OutboxMessage } from './reminder.ts';

/** A way to people. It tries once; when to try again is the scheduler's business. */
export interface Messenger {
  /**
   * Sends to whoever plays the role. Gives back where it ended up, in the surface's own words, with a comma and a blank
   * between several places.
   * @throws DeliveryFailure
   */
  send(message: OutboxMessage): Promise<string>;
  /** Looks whether the message arrived although its answer was lost, by its id. */
  find(message: OutboxMessage): Promise<string | undefined>;
}

export interface DeliveryDetails {
  /** A short word for the log and the list; never what was sent. */
  readonly reason: string;
  /** `refused`: it will not be taken however often we try. `unanswered`: it may have arrived. */
  readonly outcome: 'not_sent' | 'unanswered' | 'refused';
  readonly retryAfterMs?: number;
}

/** A message that did not go, or may not have gone. */
export class DeliveryFailure extends Error {
  override readonly name = 'DeliveryFailure';
  constructor(readonly details: DeliveryDetails) {
    super(details.reason);
  }
}
