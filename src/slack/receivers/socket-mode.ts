import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { apiProblem } from '../start-problems.ts';
import { createFront, type FrontParts } from './front.ts';
import { portProblem } from './listening.ts';
import { createSockets } from './sockets.ts';
import type { Transport } from './transport.ts';

export interface SocketModeParts extends FrontParts {
  readonly appToken: string;
  readonly port: number;
  readonly host?: string;
  readonly apiUrl?: string;
}

/** Payloads over a socket that we open: no public address is needed. HTTP answers those who watch the process, and installs. */
export function createSocketModeTransport(parts: SocketModeParts): Transport {
  const { port, host, apiUrl } = parts;
  const sockets = createSockets(parts);
  let isServing = true;
  const front = createFront(parts, { isServing: () => isServing, hasSocket: sockets.isOpen });
  const pages = createServer((request, response) => {
    if (!front(request, response)) response.writeHead(isServing ? 404 : 503).end();
  });

  return {
    receiver: sockets.receiver,
    async start() {
      await new Promise<void>((resolve, reject) => {
        pages.once('error', (error) => reject(portProblem(error, port)));
        pages.listen({ port, ...(host ? { host } : {}) }, resolve);
      });
      await sockets.open().catch((error) => {
        pages.close();
        throw apiProblem(error, 'SLACK_APP_TOKEN', apiUrl);
      });
      return (pages.address() as AddressInfo).port;
    },
    async refuse() {
      isServing = false;
      await sockets.close();
    },
    async stop() {
      await new Promise<void>((resolve) => {
        pages.close(() => resolve());
        pages.closeAllConnections();
      });
    },
  };
}
