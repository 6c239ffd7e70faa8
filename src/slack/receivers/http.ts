import type { IncomingMessage, Server, ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { HTTPReceiver } from '@slack/bolt';
import type { Clock } from '../../kitchen/kitchen.ts';
import { boltLogger } from '../log.ts';
import { refusal } from './admission.ts';
import { createFront, type FrontParts } from './front.ts';
import { portProblem } from './listening.ts';
import type { Transport } from './transport.ts';

/** Where Slack sends events, commands and presses. */
export const EVENTS_PATH = '/slack/events';

export interface HttpParts extends FrontParts {
  readonly signingSecret: string;
  readonly port: number;
  readonly host?: string;
  readonly clock: Clock;
}

/** Signed requests over HTTP. */
export function createHttpTransport(parts: HttpParts): Transport {
  const { signingSecret, port, host, clock, log, metrics } = parts;
  let isServing = true;
  const receiver = new HTTPReceiver({
    signingSecret,
    endpoints: [EVENTS_PATH],
    logger: boltLogger(log),
    dispatchErrorHandler: ({ response }) => end(response, 404),
    processEventErrorHandler: async ({ response }) => {
      log.warn({}, 'a payload had a shape nobody reads');
      end(response, 400);
      return false;
    },
  });

  const toBolt = receiver.requestListener;
  const front = createFront(parts, { isServing: () => isServing });
  receiver.requestListener = (request, response) => {
    if (front(request, response)) return;
    if (!isServing) return end(response, 503);
    if (!isForSlack(request)) return end(response, 404);
    void admit(request, response);
  };

  async function admit(request: IncomingMessage, response: ServerResponse): Promise<void> {
    try {
      const status = await refusal(request, clock.nowMs());
      if (status === undefined) return toBolt(request, response);
      log.warn({ status }, 'a request was refused');
      metrics.refused(status);
      end(response, status);
    } catch {
      // The sender hung up while sending; nobody is left to tell.
      response.destroy();
    }
  }

  return {
    receiver,
    async start() {
      const server: Server = await receiver.start({ port, ...(host ? { host } : {}) }).catch((error) => {
        throw portProblem(error, port);
      });
      return (server.address() as AddressInfo).port;
    },
    async refuse() {
      isServing = false;
    },
    async stop() {
      await receiver.stop();
    },
  };
}

const isForSlack = (request: IncomingMessage): boolean =>
  request.method === 'POST' && request.url?.split('?', 1)[0] === EVENTS_PATH;

function end(response: ServerResponse, status: number): void {
  if (response.headersSent) return;
  response.writeHead(status, { connection: 'close' });
  response.end();
}
