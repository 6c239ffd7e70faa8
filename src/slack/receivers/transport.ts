import type { Receiver } from '@slack/bolt';

/** How payloads arrive: the receiver for Bolt, and its life. */
export interface Transport {
  readonly receiver: Receiver;
  /** Resolves with the port that answers HTTP. Throws a `Problem` that says what to change. */
  start(): Promise<number>;
  /** Takes no new payloads from now on: over HTTP they get a 503, and another instance gets those of a socket. */
  refuse(): Promise<void>;
  /** Closes what `refuse` left open. */
  stop(): Promise<void>;
}
