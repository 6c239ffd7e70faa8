import type { IncomingMessage, ServerResponse } from 'node:http';
import { errorCode } from '../errors.ts';
import type { Log } from '../log.ts';
import type { Metrics } from '../metrics.ts';
import { within } from '../within.ts';
import type { Installing } from '../workspaces/installing.ts';

/** Longer without a socket is no reconnect any more: whoever watches the process should start it again. */
const DEAF_S = 120;
/** A database that takes longer does not answer; whoever asks is answered all the same. */
const DATABASE_MS = 2_000;

export interface FrontParts {
  readonly metrics: Metrics;
  readonly log: Log;
  /** Whether the database answers; absent where nothing is remembered. */
  readonly databaseAnswers?: () => Promise<boolean>;
  /** Absent where the token of the one workspace is in the settings. */
  readonly installing?: Installing;
}

/** What a transport knows of itself. */
export interface TransportState {
  isServing(): boolean;
  /** Absent over HTTP. */
  hasSocket?(): boolean;
}

/** Answers a request that is not Slack's; false when it is for nobody here. */
export type Front = (request: IncomingMessage, response: ServerResponse) => boolean;

/** `/healthz`, `/readyz`, `/metrics` and the pages of an install, the same over HTTP and beside Socket Mode. */
export function createFront(parts: FrontParts, state: TransportState): Front {
  const { metrics, log } = parts;
  const pages: Readonly<Record<string, (response: ServerResponse) => void | Promise<void>>> = {
    '/healthz': (response) => {
      const isWell = state.isServing() && metrics.withoutSocketS() < DEAF_S;
      say(response, isWell ? 200 : 503, state.isServing() ? (isWell ? 'ok\n' : 'no socket\n') : 'stopping\n');
    },
    '/readyz': async (response) => {
      const checks = {
        serving: state.isServing(),
        ...(parts.databaseAnswers ? { database: await answersSoon(parts.databaseAnswers) } : {}),
        ...(state.hasSocket ? { socket: state.hasSocket() } : {}),
      };
      const isReady = Object.values(checks).every(Boolean);
      say(response, isReady ? 200 : 503, `${JSON.stringify(checks)}\n`, 'application/json');
    },
    '/metrics': async (response) => {
      const { type, text } = await metrics.page();
      say(response, 200, text, type);
    },
  };
  return (request, response) => {
    const page = pages[request.url?.split('?', 1)[0] ?? ''];
    if (!page || (request.method !== 'GET' && request.method !== 'HEAD')) {
      if (!state.isServing()) return false;
      return parts.installing?.serve(request, response) ?? false;
    }
    void (async () => page(response))().catch((error) => {
      log.error({ code: errorCode(error) }, 'a page failed');
      if (!response.headersSent) say(response, 503, 'unavailable\n');
    });
    return true;
  };
}

async function answersSoon(databaseAnswers: () => Promise<boolean>): Promise<boolean> {
  let answers = false;
  const asking = databaseAnswers().then((says) => {
    answers = says;
  });
  return (await within(DATABASE_MS, asking)) && answers;
}

function say(response: ServerResponse, status: number, text: string, type = 'text/plain'): void {
  response.writeHead(status, { 'content-type': type, 'cache-control': 'no-store' });
  response.end(text);
}
