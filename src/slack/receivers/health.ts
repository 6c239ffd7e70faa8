import type { ServerResponse } from 'node:http';

export const HEALTH_PATH = '/healthz';

/** Says whether this process serves: 200 while it does, 503 once it stops. */
export function sayHealth(response: ServerResponse, isServing: boolean): void {
  response.writeHead(isServing ? 200 : 503, { 'content-type': 'text/plain' });
  response.end(isServing ? 'ok\n' : 'stopping\n');
}
