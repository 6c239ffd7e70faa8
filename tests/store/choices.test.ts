import { afterAll, beforeAll, expect, test } from 'vitest';
import { choiceBooksIn } from '../../src/store/choices.ts';
import type { Database } from '../../src/store/database.ts';
import { freshDatabase } from '../helpers/database.ts';

let database: Database;
beforeAll(async () => {
  database = await freshDatabase();
});
afterAll(() => database.close());

test('what a workspace chose is its own, written whole, and read by the next instance', async () => {
  const books = choiceBooksIn(database);
  expect(await books('T1').get()).toEqual({});
  await books('T1').put({ mostDays: 5, par: { 'oat-bars': 60 } }, 'U1', 1);
  await books('T2').put({ timeZone: 'America/Denver' }, 'U2', 2);
  await books('T1').put({ mostDays: 4 }, 'U1', 3);
  expect(await choiceBooksIn(database)('T1').get()).toEqual({ mostDays: 4 });
  expect(await books('T2').get()).toEqual({ timeZone: 'America/Denver' });
});
