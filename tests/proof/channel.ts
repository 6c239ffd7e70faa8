import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

/** What arrived in a channel outside of every process that may be killed. */
export interface OutsideChannel {
  readonly port: number;
  /** Messages by what they tell of; more than one message of a key is a duplicate. */
  readonly byKey: ReadonlyMap<string, readonly string[]>;
  /** Sent again although a look at the history would have shown it. */
  readonly forbidden: readonly string[];
  /** Sent again by one that had looked itself, before the first one arrived: it could not know. */
  readonly allowed: readonly string[];
  readonly looks: number;
  readonly found: number;
  /** Resolves when that many more calls have come in; with `holds` the last of them never gets its answer. */
  calls(count: number, holds: boolean): Promise<void>;
  /** Nobody waits for calls any more. */
  forget(): void;
  close(): Promise<void>;
}

/** A channel over loopback HTTP: `/send` keeps the message, `/find` looks in the history. */
export async function openChannel(): Promise<OutsideChannel> {
  const byKey = new Map<string, string[]>();
  const arrived = new Set<string>();
  const lookedInVain = new Set<string>();
  const channel = { forbidden: [] as string[], allowed: [] as string[], looks: 0, found: 0 };
  const waiting: { left: number; holds: boolean; resolve: () => void }[] = [];
  const reached = (): boolean => {
    let isHeld = false;
    for (const each of waiting) {
      each.left -= 1;
      if (each.left !== 0) continue;
      each.resolve();
      isHeld ||= each.holds;
    }
    return isHeld;
  };
  const server = createServer((asked, answer) => {
    const isHeld = reached();
    const reply = (text: string): void => {
      if (!isHeld) answer.end(text);
    };
    const { pathname, searchParams } = new URL(asked.url ?? '', 'http://channel');
    const id = searchParams.get('id') ?? '';
    const look = `${id} ${searchParams.get('by') ?? ''}`;
    if (pathname === '/find') {
      channel.looks += 1;
      if (arrived.has(id)) channel.found += 1;
      else lookedInVain.add(look);
      reply(arrived.has(id) ? `history ${id}` : '');
      return;
    }
    const key = searchParams.get('key') ?? '';
    if (arrived.has(id)) (lookedInVain.has(look) ? channel.allowed : channel.forbidden).push(key);
    arrived.add(id);
    byKey.set(key, [...(byKey.get(key) ?? []), id]);
    reply(`sent ${id}`);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    port: (server.address() as AddressInfo).port,
    byKey,
    forbidden: channel.forbidden,
    allowed: channel.allowed,
    get looks() {
      return channel.looks;
    },
    get found() {
      return channel.found;
    },
    calls: (left, holds) => new Promise((resolve) => waiting.push({ left, holds, resolve })),
    forget: () => void waiting.splice(0),
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}
