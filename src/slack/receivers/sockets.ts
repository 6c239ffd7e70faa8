import { type App, type Receiver, SocketModeReceiver } from '@slack/bolt';
import { clientOptions } from '../client.ts';
import { errorCode, retryAfterS } from '../errors.ts';
import { boltLogger, type Log } from '../log.ts';
import type { Metrics } from '../metrics.ts';
import { within } from '../within.ts';
import { isFarewell, readMessages } from './socket-messages.ts';

/** A socket that leaves a ping unanswered for longer is given up: Slack gives up on a command after as long. */
const PING_TIMEOUT_MS = 3_000;
/** Longer than this no socket takes to open. */
const OPENING_MS = 10_000;
const FIRST_PAUSE_MS = 250;
const LONGEST_PAUSE_MS = 30_000;
/** What came over a socket that is replaced is acknowledged over it within this. */
const LINGER_MS = 3_000;
const CLOSING_MS = 2_000;

export interface SocketsParts {
  readonly appToken: string;
  readonly apiUrl?: string;
  readonly log: Log;
  readonly metrics: Metrics;
}

/** The sockets to Slack: one, and for moments two, so that no second is without any. */
export interface Sockets {
  readonly receiver: Receiver;
  isOpen(): boolean;
  /** Opens the first. Throws Slack's refusal. */
  open(): Promise<void>;
  close(): Promise<void>;
}

/**
 * Slack takes every socket away now and then, and says so shortly before. The library closes it then, and opens the next
 * afterwards; here the next is open before the last is let go, and after a cut the next is opened at once. It is tried for as
 * long as the service runs: a process that gives up is deaf.
 */
export function createSockets({ appToken, apiUrl, log, metrics }: SocketsParts): Sockets {
  const live = new Set<SocketModeReceiver>();
  const leaving = new Set<SocketModeReceiver>();
  let app: App | undefined;
  let isClosing = false;
  let opening: Promise<void> | undefined;

  function newSocket(): SocketModeReceiver {
    const socket = new SocketModeReceiver({
      appToken,
      logger: boltLogger(log),
      clientPingTimeout: PING_TIMEOUT_MS,
      autoReconnectEnabled: false,
      // An object of its own: the client writes into it.
      installerOptions: { clientOptions: clientOptions(apiUrl) },
    });
    if (app) socket.init(app);
    readMessages(socket, {
      isPassedOver: (message) => isFarewell(message) && replace(socket),
      onBroken: () => log.warn({}, 'an envelope had a shape nobody reads'),
    });
    socket.client.on('connected', () => {
      const gapS = metrics.withoutSocketS();
      live.add(socket);
      metrics.socketOpened();
      if (gapS > 0) log.info({ gapS }, 'the socket is open again');
    });
    socket.client.on('close', () => {
      leaving.delete(socket);
      if (!live.delete(socket) || live.size > 0 || isClosing) return;
      metrics.socketClosed();
      log.warn({}, 'the socket was cut');
      void keepOpening();
    });
    return socket;
  }

  async function openOne(): Promise<void> {
    const { client } = newSocket();
    if (await within(OPENING_MS, client.start())) return;
    void client.disconnect();
    throw new Error('the socket did not open in time');
  }

  /** One attempt after the other until there is a socket again; who asks meanwhile waits for the same. */
  function keepOpening(): Promise<void> {
    opening ??= (async () => {
      for (let failures = 0; !isClosing; failures += 1) {
        try {
          return await openOne();
        } catch (error) {
          log.warn({ code: errorCode(error) }, 'a socket was not opened');
          await pause(Math.max(pauseMs(failures), (retryAfterS(error) ?? 0) * 1000));
        }
      }
    })().finally(() => {
      opening = undefined;
    });
    return opening;
  }

  /** True: the farewell is not for the library, which would close the socket before there is another. */
  function replace(socket: SocketModeReceiver): boolean {
    if (leaving.has(socket) || isClosing) return true;
    leaving.add(socket);
    void keepOpening().then(async () => {
      await pause(LINGER_MS);
      await within(CLOSING_MS, socket.client.disconnect());
    });
    return true;
  }

  return {
    receiver: {
      init(given) {
        app = given;
      },
      start: openOne,
      stop: close,
    },
    isOpen: () => live.size > 0,
    open: openOne,
    close,
  };

  async function close(): Promise<void> {
    isClosing = true;
    const sockets = [...live];
    await Promise.all(sockets.map(({ client }) => within(CLOSING_MS, client.disconnect())));
  }
}

const pauseMs = (failures: number): number => Math.min(FIRST_PAUSE_MS * 2 ** failures, LONGEST_PAUSE_MS);

/** Keeps no process alive. */
const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms).unref());
