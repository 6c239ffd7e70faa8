import type { SocketModeReceiver } from '@slack/bolt';

export interface MessageReading {
  /** Whether a message is not for the library. */
  readonly isPassedOver: (message: string) => boolean;
  readonly onBroken: () => void;
}

/**
 * Hands the messages of a socket to the library, which reads each in a promise nobody waits for: one that it cannot read
 * would end the process.
 */
export function readMessages(
  { client }: SocketModeReceiver,
  { isPassedOver, onBroken }: MessageReading,
): void {
  const readers = client.listeners('ws_message') as ((...message: unknown[]) => Promise<void>)[];
  client.removeAllListeners('ws_message');
  for (const read of readers) {
    client.on('ws_message', (...message: unknown[]) => {
      const [text] = message;
      if (typeof text === 'string' && isPassedOver(text)) return;
      void read.apply(client, message).catch(onBroken);
    });
  }
}

/** Slack's word that it will take the socket away: `warning` some ten seconds before, `refresh_requested` now. */
export function isFarewell(message: string): boolean {
  if (!message.includes('"disconnect"')) return false;
  try {
    return (JSON.parse(message) as { type?: unknown } | null)?.type === 'disconnect';
  } catch {
    return false;
  }
}
