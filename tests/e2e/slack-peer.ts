import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { type WebSocket, WebSocketServer } from 'ws';
import { SCOPES } from '../../src/slack/scopes.ts';
import { createChannels } from './channels.ts';
import { METHODS } from './peer-methods.ts';

/** One call of the service to Slack: a Web API method, or `respond`. */
export interface PeerCall {
  readonly method: string;
  readonly token: string | undefined;
  readonly body: Record<string, unknown>;
  readonly atMs: number;
}

/** A local Slack: the Web API, response urls and Socket Mode, as the service sees them. */
export interface SlackPeer {
  readonly apiUrl: string;
  readonly responseUrl: string;
  readonly calls: PeerCall[];
  /** A method's error, or an HTTP status for `respond`. */
  readonly fail: Map<string, string | number>;
  /** What a method answers here instead of the usual. */
  readonly says: Map<string, (call: PeerCall) => object>;
  /** Methods that are never answered. */
  readonly stalls: Set<string>;
  /** Channels that take nothing: what Slack answers to a post there. */
  readonly shut: Map<string, string>;
  /** Files of people, by the end of their address; handed over to who brings a token. */
  readonly files: Map<string, Buffer>;
  /** What was uploaded, by file id. */
  readonly uploads: Map<string, Buffer>;
  readonly origin: string;
  /** What `users.info` says of everybody. */
  user: Record<string, unknown>;
  /** Calls that a person would see, once there are `count` of them, or of those whose method is `counted`. */
  answers(count: number, counted?: RegExp): Promise<PeerCall[]>;
  /** The same, and what the acknowledgement said. */
  answered(type: string, payload: object): Promise<unknown>;
  /** Sends an envelope over the newest socket; resolves with the milliseconds until it was acknowledged. */
  envelope(type: string, payload: object, more?: object): Promise<number>;
  /** Asks the service to take another socket, as Slack does now and then. */
  recycle(reason?: 'warning' | 'refresh_requested'): void;
  /** Ends every connection without a word. */
  cut(): void;
  /** Leaves every connection open and hears nothing any more, as behind a broken network. */
  deafen(): void;
  sockets(): number;
  close(): Promise<void>;
}

const UNSEEN = new Set(['auth.test', 'users.info', 'apps.connections.open', 'conversations.history']);
const UPLOAD = '/upload/';

export async function startSlackPeer(): Promise<SlackPeer> {
  const calls: PeerCall[] = [];
  const fail = new Map<string, string | number>();
  const says = new Map<string, (call: PeerCall) => object>();
  const stalls = new Set<string>();
  const shut = new Map<string, string>();
  const files = new Map<string, Buffer>();
  const uploads = new Map<string, Buffer>();
  const channels = createChannels();
  const waiting = new Map<string, (payload: unknown) => void>();
  const server = createServer((request, response) => void serve(request, response));
  const sockets = new WebSocketServer({ server, path: '/socket' });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const host = `127.0.0.1:${(server.address() as AddressInfo).port}`;
  let newest: WebSocket | undefined;
  let envelopes = 0;

  sockets.on('connection', (socket) => {
    newest = socket;
    socket.on('message', (data) => {
      const { envelope_id: id, payload } = JSON.parse(String(data)) as {
        envelope_id?: string;
        payload?: unknown;
      };
      if (id) waiting.get(id)?.(payload);
    });
    socket.send(JSON.stringify({ type: 'hello', num_connections: 1, connection_info: { app_id: 'A0' } }));
  });

  async function serve(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const chunks: Buffer[] = [];
    for await (const chunk of request) chunks.push(chunk);
    const bytes = Buffer.concat(chunks);
    if (request.url?.startsWith(UPLOAD)) {
      uploads.set(request.url.slice(UPLOAD.length), bytes);
      response.end('OK');
      return;
    }
    const text = bytes.toString();
    const method = request.url === '/respond' ? 'respond' : (request.url ?? '').replace('/api/', '');
    const token = request.headers.authorization?.replace('Bearer ', '');
    const call: PeerCall = { method, token, body: fieldsOf(text), atMs: performance.now() };
    calls.push(call);
    if (stalls.has(method)) return;
    const file = files.get(request.url ?? '');
    if (file) {
      response.writeHead(token ? 200 : 302).end(token ? file : '');
      return;
    }
    const channel = String(calls.at(-1)?.body.channel ?? '');
    const error = (method === 'chat.postMessage' ? shut.get(channel) : undefined) ?? fail.get(method);
    if (method === 'respond') {
      response.writeHead(typeof error === 'number' ? error : 200).end('ok');
      return;
    }
    const answer =
      says.get(method)?.(call) ??
      (error
        ? undefined
        : METHODS[method]?.({
            user: peer.user,
            socketUrl: `ws://${host}/socket`,
            origin: `http://${host}`,
            channels,
            body: call.body,
          }));
    const body = error || !answer ? { ok: false, error: error ?? 'unknown_method' } : { ok: true, ...answer };
    response.writeHead(200, {
      'content-type': 'application/json',
      'x-oauth-scopes': Object.keys(SCOPES).join(','),
    });
    response.end(JSON.stringify(body));
  }

  function envelope(type: string, payload: object, more: object = {}): Promise<unknown> {
    envelopes += 1;
    const id = `envelope-${envelopes}`;
    const acked = new Promise<unknown>((resolve) => waiting.set(id, resolve));
    newest?.send(JSON.stringify({ envelope_id: id, type, payload, accepts_response_payload: true, ...more }));
    return acked;
  }

  const peer: SlackPeer = {
    apiUrl: `http://${host}/api/`,
    responseUrl: `http://${host}/respond`,
    calls,
    fail,
    says,
    stalls,
    shut,
    files,
    uploads,
    origin: `http://${host}`,
    user: {},
    answers: (count, counted = /./) =>
      until(
        () => calls.filter((call) => !UNSEEN.has(call.method)),
        count,
        ({ method }) => counted.test(method),
      ),
    async envelope(type, payload, more = {}) {
      const startedMs = performance.now();
      await envelope(type, payload, more);
      return performance.now() - startedMs;
    },
    answered: envelope,
    recycle: (reason = 'refresh_requested') => newest?.send(JSON.stringify({ type: 'disconnect', reason })),
    cut: () => {
      for (const socket of sockets.clients) socket.terminate();
    },
    deafen: () => {
      for (const socket of sockets.clients) socket.pause();
    },
    sockets: () => sockets.clients.size,
    async close() {
      for (const socket of sockets.clients) socket.terminate();
      sockets.close();
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
  return peer;
}

function fieldsOf(text: string): Record<string, unknown> {
  if (text.startsWith('{')) return JSON.parse(text) as Record<string, unknown>;
  const fields: Record<string, unknown> = Object.fromEntries(new URLSearchParams(text));
  for (const name of ['blocks', 'view', 'metadata']) {
    if (typeof fields[name] === 'string') fields[name] = JSON.parse(fields[name]);
  }
  return fields;
}

/** The list once it holds `count`, and a little later still does not hold more. */
async function until<T>(
  list: () => T[],
  count: number,
  isCounted: (value: T) => boolean = () => true,
): Promise<T[]> {
  const deadline = performance.now() + 8_000;
  while (list().filter(isCounted).length < count && performance.now() < deadline) await pause(5);
  await pause(60);
  return list();
}

export const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
