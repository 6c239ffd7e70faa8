import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { SocketModeReceiver } from '@slack/bolt';
import { clientOptions } from '../client.ts';
import { boltLogger } from '../log.ts';
import { apiProblem } from '../start-problems.ts';
import { within } from '../within.ts';
import { createFront, type FrontParts } from './front.ts';
import { portProblem } from './listening.ts';
import type { Transport } from './transport.ts';

/**
 * After Slack closes a socket the client waits this long before it opens the next, and it gives up on a socket whose
 * answer to a ping takes longer. Its default of 5 s is 5 s without commands at every recycling.
 */
const PING_TIMEOUT_MS = 2_000;
/** Keeps looking for a socket for as long as the service runs: a process that gives up is deaf. */
const RECONNECTING = { forever: true, factor: 1.3, minTimeout: 500, maxTimeout: 30_000 };
const CLOSING_MS = 2_000;

export interface SocketModeParts extends FrontParts {
  readonly appToken: string;
  readonly port: number;
  readonly host?: string;
  readonly apiUrl?: string;
}

/** Payloads over a socket that we open: no public address is needed. HTTP answers those who watch the process, and installs. */
export function createSocketModeTransport(parts: SocketModeParts): Transport {
  const { appToken, port, host, apiUrl, log, metrics } = parts;
  // Its own options object: the client writes its retries into it.
  const options = { ...clientOptions(apiUrl), retryConfig: RECONNECTING, rejectRateLimitedCalls: false };
  const receiver = new SocketModeReceiver({
    appToken,
    logger: boltLogger(log),
    clientPingTimeout: PING_TIMEOUT_MS,
    installerOptions: { clientOptions: options },
  });
  passOverBroken(receiver, () => log.warn({}, 'an envelope had a shape nobody reads'));
  let isServing = true;
  let hasSocket = false;
  const front = createFront(parts, { isServing: () => isServing, hasSocket: () => hasSocket });
  const pages = createServer((request, response) => {
    if (!front(request, response)) response.writeHead(isServing ? 404 : 503).end();
  });
  receiver.client.on('connected', () => {
    hasSocket = true;
    const gapS = metrics.withoutSocketS();
    metrics.socketOpened();
    if (gapS > 0) log.info({ gapS }, 'the socket is open again');
  });
  receiver.client.on('close', () => {
    hasSocket = false;
    if (isServing) metrics.socketClosed();
  });

  return {
    receiver,
    async start() {
      await new Promise<void>((resolve, reject) => {
        pages.once('error', (error) => reject(portProblem(error, port)));
        pages.listen({ port, ...(host ? { host } : {}) }, resolve);
      });
      await receiver.start().catch((error) => {
        pages.close();
        throw apiProblem(error, 'SLACK_APP_TOKEN', apiUrl);
      });
      return (pages.address() as AddressInfo).port;
    },
    async refuse() {
      isServing = false;
      await within(CLOSING_MS, receiver.client.disconnect());
    },
    async stop() {
      await new Promise<void>((resolve) => {
        pages.close(() => resolve());
        pages.closeAllConnections();
      });
    },
  };
}

/** The client reads an envelope in a promise nobody waits for: one that it cannot read would end the process. */
function passOverBroken({ client }: SocketModeReceiver, onBroken: () => void): void {
  const readers = client.listeners('ws_message') as ((...message: unknown[]) => Promise<void>)[];
  client.removeAllListeners('ws_message');
  for (const read of readers) {
    client.on('ws_message', (...message: unknown[]) => void read.apply(client, message).catch(onBroken));
  }
}
