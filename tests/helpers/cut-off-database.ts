import { renameSync } from 'node:fs';
import { connect, createServer, type Socket } from 'node:net';
import { freshPlace } from './database.ts';

/** A database that can be taken away and given back, while a program has it open. */
export interface CutOffDatabase {
  readonly url: string;
  take(): void;
  /** Takes connections and says nothing; PostgreSQL only. */
  hold(): void;
  giveBack(): void;
  remove(): Promise<void>;
}

/** SQLite: its file is moved away. PostgreSQL: the network between is cut, as a proxy. */
export async function cutOffDatabase(): Promise<CutOffDatabase> {
  const place = await freshPlace();
  return place.url.startsWith('postgres') ? behindProxy(place) : ofFile(place);
}

function ofFile({ url, remove }: Awaited<ReturnType<typeof freshPlace>>): CutOffDatabase {
  return {
    url,
    take: () => renameSync(url, `${url}.gone`),
    hold: () => renameSync(url, `${url}.gone`),
    giveBack: () => renameSync(`${url}.gone`, url),
    remove,
  };
}

async function behindProxy({ url, remove }: Awaited<ReturnType<typeof freshPlace>>): Promise<CutOffDatabase> {
  const real = new URL(url);
  const pairs = new Set<readonly [Socket, Socket]>();
  let state: 'open' | 'gone' | 'mute' = 'open';
  const server = createServer((near) => {
    if (state === 'gone') return near.destroy();
    const far = connect(Number(real.port) || 5432, real.hostname);
    const pair = [near, far] as const;
    pairs.add(pair);
    for (const [from, to] of [pair, [far, near] as const]) {
      from.on('data', (data) => state !== 'mute' && to.write(data));
      from.on('error', () => {});
      from.on('close', () => {
        pairs.delete(pair);
        to.destroy();
      });
    }
    return near;
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const cut = (): void => {
    for (const [near, far] of pairs) {
      near.destroy();
      far.destroy();
    }
  };
  const proxied = new URL(url);
  proxied.hostname = '127.0.0.1';
  proxied.port = String((server.address() as { port: number }).port);
  return {
    url: proxied.href,
    take() {
      state = 'gone';
      cut();
    },
    hold() {
      state = 'mute';
    },
    giveBack() {
      if (state === 'mute') cut();
      state = 'open';
    },
    async remove() {
      cut();
      await new Promise((resolve) => server.close(resolve));
      await remove();
    },
  };
}
