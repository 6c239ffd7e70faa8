import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { SocketModeReceiver } from '@slack/bolt';
import { clientOptions } from '../client.ts';
import { boltLogger, type Log } from '../log.ts';
import { apiProblem } from '../start-problems.ts';
import { HEALTH_PATH, sayHealth } from './health.ts';
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

export interface SocketModeParts {
  readonly appToken: string;
  readonly port: number;
  readonly host?: string;
  readonly apiUrl?: string;
  readonly log: Log;
}

/** Payloads over a socket that we open: no public address is needed. HTTP answers the health check only. */
export function createSocketModeTransport({ appToken, port, host, apiUrl, log }: SocketModeParts): Transport {
  // Its own options object: the client writes its retries into it.
  const options = { ...clientOptions(apiUrl), retryConfig: RECONNECTING, rejectRateLimitedCalls: false };
  const receiver = new SocketModeReceiver({
    appToken,
    logger: boltLogger(log),
    clientPingTimeout: PING_TIMEOUT_MS,
    installerOptions: { clientOptions: options },
  });
  let isServing = true;
  const health = createServer((request, response) => {
    if (request.url === HEALTH_PATH) return sayHealth(response, isServing && hasSocket);
    response.writeHead(404).end();
  });
  let hasSocket = false;
  receiver.client.on('connected', () => {
    hasSocket = true;
  });
  receiver.client.on('close', () => {
    hasSocket = false;
  });

  return {
    receiver,
    async start() {
      await new Promise<void>((resolve, reject) => {
        health.once('error', (error) => reject(portProblem(error, port)));
        health.listen({ port, ...(host ? { host } : {}) }, resolve);
      });
      await receiver.start().catch((error) => {
        health.close();
        throw apiProblem(error, 'SLACK_APP_TOKEN', apiUrl);
      });
      return (health.address() as AddressInfo).port;
    },
    async stop() {
      isServing = false;
      const closing = receiver.client.disconnect();
      let timer: NodeJS.Timeout | undefined;
      const late = new Promise<void>((resolve) => {
        timer = setTimeout(resolve, CLOSING_MS);
      });
      await Promise.race([closing, late]).finally(() => clearTimeout(timer));
      await new Promise<void>((resolve) => health.close(() => resolve()));
    },
  };
}
