import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type CutOffDatabase, cutOffDatabase } from '../helpers/cut-off-database.ts';
import { command, STAFF } from '../slack/payloads.ts';
import { type Program, startProgram } from './program.ts';
import { asForm } from './signed.ts';
import { pause, type SlackPeer, startSlackPeer } from './slack-peer.ts';

let peer: SlackPeer;
let database: CutOffDatabase;
let program: Program;
beforeAll(async () => {
  peer = await startSlackPeer();
  database = await cutOffDatabase();
  const isPostgres = database.url.startsWith('postgres');
  program = isPostgres
    ? await startProgram(peer, [], { DATABASE_URL: database.url })
    : await startProgram(peer, ['--db', database.url]);
});
afterAll(async () => {
  program.child.kill('SIGKILL');
  await program.ended;
  await peer.close();
  await database.remove();
});

async function ready(): Promise<{ status: number; says: unknown; ms: number }> {
  const fromMs = performance.now();
  const response = await fetch(`${program.url}/readyz`);
  const says: unknown = await response.json();
  return { status: response.status, says, ms: performance.now() - fromMs };
}
async function answered(text: string): Promise<string> {
  peer.calls.length = 0;
  const fields = command(text, { response_url: peer.responseUrl, user_id: STAFF });
  const { status } = await fetch(
    `${program.url}/slack/events`,
    asForm(fields as unknown as Record<string, string>),
  );
  expect(status).toBe(200);
  const replies = () => peer.calls.filter(({ method }) => method === 'respond');
  while (replies().length === 0) await pause(10);
  return String(replies()[0]?.body.text);
}

describe('a service whose database goes away', () => {
  test.each(['take', 'hold'] as const)('is not ready, says why, and is ready again (%s)', async (how) => {
    expect(await ready()).toMatchObject({ status: 200, says: { serving: true, database: true } });
    await answered('made 4 oat bars');
    database[how]();
    const gone = await ready();
    expect(gone).toMatchObject({ status: 503, says: { serving: true, database: false } });
    expect(gone.ms).toBeLessThan(5_000);
    expect((await fetch(`${program.url}/healthz`)).status).toBe(200);
    // What needs no memory goes on.
    expect(await answered('40 oat bars')).toMatch(/^40 /);
    database.giveBack();
    const end = performance.now() + 20_000;
    while ((await ready()).status !== 200 && performance.now() < end) await pause(50);
    expect(await ready()).toMatchObject({ status: 200, says: { serving: true, database: true } });
    expect(await answered('stock')).toContain('oat bars');
  });
});
