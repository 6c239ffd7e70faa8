import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { COMMANDS } from '../../src/chat/commands/index.ts';
import { HERONS, type Installable, startInstallable, TERNS } from './installable.ts';

/** What the first workspace writes down, each with something only it can have said. */
const WRITTEN = [
  'made 37 oat bars with lot HERLOT9 of vanilla whey',
  'fridge A 39.3 F',
  'game Fri 2pm vs Ridgeline',
  'remind us friday 9:00 to thaw the dough',
  'WP-77 needs: sesame',
];
const OWN = /HERLOT9|Ridgeline|thaw the dough|\b37 oat bars|39\.3|WP-77/i;
const ASKED = [
  ...COMMANDS.flatMap(({ help }) => help.examples),
  'stock',
  'what expires this week',
  'schedule',
  'reminders',
  'roster',
  'temperature log',
  'trace oat bars',
  'label B1',
  'trace B1',
  'done R1',
  'undo',
];

let service: Installable;
beforeAll(async () => {
  service = await startInstallable();
  await service.install(HERONS);
  await service.install(TERNS);
  for (const text of WRITTEN) await service.ask(0, HERONS.team, HERONS.installer, text);
}, 120_000);
afterAll(() => service.stop());

/** All rows of the first workspace. */
async function rows(): Promise<string> {
  const { db } = await service.store.memory.database();
  const tables = (await db.introspection.getTables()).map(({ name, columns }) => ({ name, columns }));
  const own = tables.filter(({ columns }) => columns.some(({ name }) => name === 'workspace'));
  const all: unknown[] = [];
  for (const name of [...new Set(own.map((table) => table.name))].sort()) {
    if (name === 'claims') continue;
    all.push(
      name,
      await db
        .selectFrom(name as 'events')
        .selectAll()
        .where('workspace', '=', HERONS.team)
        .execute(),
    );
  }
  return JSON.stringify(all);
}

describe('two workspaces of one service', () => {
  test('the first finds what it wrote', async () => {
    const [roster] = await service.ask(1, HERONS.team, HERONS.installer, 'roster');
    expect(roster).toMatch(OWN);
    expect(await rows()).toMatch(OWN);
  });

  test.each([...new Set(ASKED)])('the other, by "%s", finds and changes nothing of it', async (text) => {
    const before = await rows();
    const answers = await service.ask(1, TERNS.team, TERNS.installer, text);
    expect(answers.length).toBeGreaterThan(0);
    expect(answers.join()).not.toMatch(OWN);
    expect(JSON.stringify(service.peer.calls)).not.toMatch(OWN);
    for (const { token } of service.peer.calls) expect([undefined, TERNS.token]).toContain(token);
    expect(await rows()).toBe(before);
  });
});
