import type { Clock, Kitchen } from '../../src/kitchen/kitchen.ts';
import { openKitchen } from '../../src/open-kitchen.ts';
import { lazyMemory, type Memory } from '../../src/open-memory.ts';
import { freshPlace } from './database.ts';

export interface RememberingKitchen {
  readonly kitchen: Kitchen;
  readonly memory: Memory;
  close(): Promise<void>;
}

/** The demo kitchen with a fresh database: SQLite, or PostgreSQL where DATABASE_URL says so. */
export async function rememberingKitchen(clock: Clock): Promise<RememberingKitchen> {
  const place = await freshPlace();
  const memory = lazyMemory(place.url, () => clock.nowMs());
  return {
    kitchen: { ...(await openKitchen(clock, undefined, memory)), choices: memory.choices },
    memory,
    async close() {
      await memory.close();
      await place.remove();
    },
  };
}
