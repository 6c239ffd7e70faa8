import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Database } from '../../src/store/database.ts';
import { freshDatabase } from '../helpers/database.ts';
import { rosterKitchen } from '../helpers/roster-kitchen.ts';
import { at } from '../helpers/stock-kitchen.ts';

let database: Database;
beforeAll(async () => {
  database = await freshDatabase();
});
afterAll(() => database.close());

test.each([
  'did we make 20 oat bars?',
  "we haven't made 20 cherry bars",
  "don't toss 3 oat bars",
  'we will serve 5 oat bars',
  'can I freeze the oat bars',
  'what if fridge a reads 45F',
  'was fridge a 47F yesterday?',
  'made 12-15 oat bars',
  'made 20 or 30 oat bars',
  'fridge a 40-44F',
])('%s writes nothing down', async (text) => {
  const nowMs = at('2026-12-02 10:00');
  const { ask, kitchen, workspace } = await rosterKitchen(database, nowMs);
  await ask('made 40 oat bars');
  const { error } = await ask(text);
  expect(error).toMatchObject({ code: 'needs_more', hint: expect.stringContaining('made 20 oat bars') });
  expect(await kitchen.ledgers(workspace).events(0, nowMs + 1)).toHaveLength(1);
});
