import { App, type Authorize, type Receiver } from '@slack/bolt';
import type { Chat } from '../chat/chat.ts';
import type { Clock } from '../kitchen/kitchen.ts';
import { ackAtOnce } from './ack-at-once.ts';
import { createAnswering } from './answering.ts';
import { clientOptions } from './client.ts';
import { errorCode } from './errors.ts';
import { createFormDoor } from './form-door.ts';
import { createHomeBoard, type HomeBoard } from './home/board.ts';
import { createInFlight, type InFlight } from './in-flight.ts';
import type { Farewell } from './listeners/farewell.ts';
import { listen } from './listeners/index.ts';
import { boltLogger, type Log } from './log.ts';
import type { Metrics } from './metrics.ts';
import type { RoleList } from './role-list.ts';
import { createRoles } from './roles.ts';
import type { Seen } from './seen.ts';
import { createTurns } from './turns.ts';

export interface SlackAppParts {
  readonly receiver: Receiver;
  /** Which workspaces are served, and the bot's identity in each. */
  readonly authorize: Authorize<boolean>;
  readonly chat: Chat;
  readonly clock: Clock;
  readonly log: Log;
  readonly roleList: RoleList;
  readonly metrics: Metrics;
  readonly seen: Seen;
  readonly farewell: Farewell;
  readonly apiUrl?: string;
  readonly wait?: (ms: number) => Promise<void>;
  /** How long a form may take before it is acknowledged without its answer. */
  readonly patienceMs?: number;
}

export interface SlackApp {
  readonly app: App;
  readonly inFlight: InFlight;
  readonly board: HomeBoard;
}

const sleep = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** The Bolt app with everything it listens to, ready to start; the transport is whatever `receiver` is. */
export async function createSlackApp(parts: SlackAppParts): Promise<SlackApp> {
  const { receiver, authorize, chat, clock, log, metrics, seen, farewell } = parts;
  const app = new App({
    receiver,
    authorize,
    deferInitialization: true,
    convoStore: false,
    extendedErrorHandler: true,
    clientOptions: clientOptions(parts.apiUrl),
    logger: boltLogger(log),
  });
  const inFlight = createInFlight();
  const waitAsAsked = parts.wait ?? sleep;
  const wait = (ms: number): Promise<void> => {
    metrics.rateLimited();
    return waitAsAsked(ms);
  };
  const roles = createRoles(parts.roleList, clock, log);
  const board = createHomeBoard({ chat, roles, clock, log, inFlight, wait });
  const { changed } = board;
  const answering = createAnswering({ chat, clock, roles, log, metrics, wait, changed });
  const door = createFormDoor({
    chat,
    roles,
    clock,
    log,
    changed,
    ...(parts.patienceMs === undefined ? {} : { patienceMs: parts.patienceMs }),
  });
  app.use(ackAtOnce);
  listen(app, { answering, door, board, inFlight, seen, metrics, turn: createTurns() }, farewell);
  app.error(async (failure: { error: Error }) => {
    log.error({ code: errorCode(failure.error) }, 'a payload was not served');
  });
  await app.init();
  return { app, inFlight, board };
}
