import { randomBytes } from 'node:crypto';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Installations } from '../../src/kitchen/workspaces/workspaces.ts';
import { installedWorkspaces } from '../../src/slack/workspaces/installed.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';

const HERONS = 'T0HERONS';
const clock = { now: 1_789_000_000_000, nowMs: () => clock.now };
const MINUTE_MS = 60_000;

let store: RememberingKitchen;
let real: Installations;
/** What becomes of a look-up: it is answered, never answered, or fails. */
let state: 'there' | 'silent' | 'gone';
const cut: Installations = {
  put: (installation) => real.put(installation),
  get(workspace) {
    if (state === 'silent') return new Promise(() => {});
    return state === 'gone' ? Promise.reject(new Error('gone')) : real.get(workspace);
  },
  remove: (workspace) => real.remove(workspace),
  workspaces: () => real.workspaces(),
  renew: () => real.renew(),
};
const opened = () => installedWorkspaces(cut, clock, 20);

beforeEach(async () => {
  store = await rememberingKitchen(clock);
  real = store.memory.workspaces([randomBytes(32)]).installations;
  state = 'there';
  const bot = { token: 'xoxb-herons', id: 'B1', userId: 'U1', scopes: [] };
  await opened().join({ team: { id: HERONS }, bot, user: { id: 'U0HERON' } } as never);
});
afterEach(() => store.close());

describe('who the bot is in a workspace', () => {
  test.each(['silent', 'gone'] as const)('is known for an hour while the memory is %s', async (how) => {
    const workspaces = opened();
    expect((await workspaces.identityOf(HERONS))?.token).toBe('xoxb-herons');
    state = how;
    clock.now += MINUTE_MS;
    const fromMs = performance.now();
    expect((await workspaces.identityOf(HERONS))?.token).toBe('xoxb-herons');
    expect(performance.now() - fromMs).toBeLessThan(1_000);
    clock.now += 61 * MINUTE_MS;
    await expect(workspaces.identityOf(HERONS)).rejects.toThrow();
    state = 'there';
    expect((await workspaces.identityOf(HERONS))?.token).toBe('xoxb-herons');
  });

  test.each(['silent', 'gone'] as const)(
    'of one not seen before is not guessed while the memory is %s',
    async (how) => {
      state = how;
      await expect(opened().identityOf('T0TERNS')).rejects.toThrow();
    },
  );

  test('that left is forgotten, whatever the memory does next', async () => {
    const workspaces = opened();
    await workspaces.identityOf(HERONS);
    await workspaces.leave(HERONS, clock.now + 1);
    state = 'silent';
    await expect(workspaces.identityOf(HERONS)).rejects.toThrow();
  });

  test('that left at another instance is forgotten once the memory says so', async () => {
    const [here, there] = [opened(), opened()];
    await here.identityOf(HERONS);
    await there.leave(HERONS, clock.now + 1);
    clock.now += MINUTE_MS;
    expect(await here.identityOf(HERONS)).toBeUndefined();
    state = 'gone';
    await expect(here.identityOf(HERONS)).rejects.toThrow();
  });
});
