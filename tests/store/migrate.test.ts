import { sql } from 'kysely';
import { afterEach, expect, test } from 'vitest';
import { openDatabase } from '../../src/store/database.ts';
import { freshPlace, type Place } from '../helpers/database.ts';

const places: Place[] = [];
const place = async (): Promise<Place> => {
  const made = await freshPlace();
  places.push(made);
  return made;
};
afterEach(async () => {
  for (const made of places.splice(0)) await made.remove();
});

test('instances that start at once all find one schema', async () => {
  const { url } = await place();
  const opened = await Promise.all(Array.from({ length: 4 }, () => openDatabase(url)));
  for (const database of opened) {
    expect(await database.db.selectFrom('events').selectAll().execute()).toEqual([]);
    await database.close();
  }
});

test('a second start changes nothing', async () => {
  const { url } = await place();
  const first = await openDatabase(url);
  await first.db
    .insertInto('readings')
    .values({
      workspace: 'W',
      event_id: 'e',
      location: 'fridge-1',
      at_ms: 1_790_000_000_000,
      temp_f: 38.5,
      action: null,
    })
    .execute();
  await first.close();
  const second = await openDatabase(url);
  expect(await second.db.selectFrom('readings').select(['at_ms', 'temp_f']).execute()).toEqual([
    { at_ms: 1_790_000_000_000, temp_f: 38.5 },
  ]);
  await second.close();
});

test('a schema from a newer program is refused, and says what to do', async () => {
  const { url } = await place();
  const database = await openDatabase(url);
  await sql`insert into kysely_migration (name, timestamp) values ('9999-later', '2030-01-01')`.execute(
    database.db,
  );
  await database.close();
  await expect(openDatabase(url)).rejects.toMatchObject({
    code: 'unavailable',
    message: expect.stringContaining('9999-later'),
    hint: expect.stringContaining('DATABASE_URL'),
  });
});

test('a place that cannot be written is a problem with a way out', async () => {
  await expect(openDatabase('/proc/nowhere/kitchen.db')).rejects.toMatchObject({ code: 'unavailable' });
});
