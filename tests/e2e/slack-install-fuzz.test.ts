import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { drawn, visits } from './fuzz-payloads.ts';
import { type Installable, startInstallable } from './installable.ts';

let service: Installable;
beforeAll(async () => {
  service = await startInstallable();
});
afterAll(() => service.stop());

describe('whatever is asked of the pages of an install', () => {
  test('is answered, never by a crash or a 5xx, and nothing that was sent stands in the page', async () => {
    const statuses = new Map<number, number>();
    const all = drawn(visits, 4 * (Number(process.env.FUZZED) || 300));
    for (const [at, { path, query, raw, method, cookie }] of all.entries()) {
      const asked = raw ?? new URLSearchParams(query).toString();
      const response = await fetch(`${service.urlOf(at % 2)}${path}?${asked}`, {
        method,
        redirect: 'manual',
        ...(cookie === undefined ? {} : { headers: { cookie } }),
      });
      const page = await response.text();
      statuses.set(response.status, (statuses.get(response.status) ?? 0) + 1);
      expect(page).not.toContain('<script');
      expect(page).not.toMatch(/xoxb|secret|at .*\.ts:\d/);
    }
    expect([...statuses.keys()].filter((status) => status >= 500)).toEqual([]);
    // Some began an install, some came back from none.
    expect([...statuses.keys()].sort()).toEqual(expect.arrayContaining([302, 400, 405]));
    for (const at of [0, 1]) expect((await fetch(`${service.urlOf(at)}/healthz`)).status).toBe(200);
  }, 600_000);
});
