import { afterAll, beforeAll, expect, test } from 'vitest';
import type { PersonNeeds, Roster } from '../../src/kitchen/roster/roster.ts';
import type { Database } from '../../src/store/database.ts';
import { rostersIn } from '../../src/store/roster.ts';
import { freshDatabase } from '../helpers/database.ts';

let database: Database;
const roster = (workspace: string): Roster => rostersIn(database)(workspace);

beforeAll(async () => {
  database = await freshDatabase();
});
afterAll(() => database.close());

const FULL: PersonNeeds = {
  code: 'WP-07',
  member: 'U012AB3CD',
  team: 'water polo',
  avoid: ['peanut', 'gluten'],
  foods: ['kiwi', 'cook\'s "special"'],
  likes: ['oat-bars'],
  pieces: 2,
  toldBy: 'file',
  updatedMs: 1_796_000_000_000,
};
const bare = (code: string): PersonNeeds => ({
  code,
  avoid: [],
  foods: [],
  likes: [],
  toldBy: 'self',
  updatedMs: 1_796_000_000_001,
});

test('a person comes back as put, with all that is known or with nothing but a code, in order of code', async () => {
  await roster('A').put([bare('WP-09'), FULL]);
  expect(await roster('A').all()).toEqual([FULL, bare('WP-09')]);
  expect(await roster('A').get('WP-07')).toEqual(FULL);
  expect(await roster('A').get('WP-08')).toBeUndefined();
});

test('a person is found by code and by workspace user id, the code first', async () => {
  await roster('B').put([FULL]);
  expect((await roster('B').get('U012AB3CD'))?.code).toBe('WP-07');
  await roster('B').put([bare('U012AB3CD')]);
  expect((await roster('B').get('U012AB3CD'))?.code).toBe('U012AB3CD');
});

test('putting a person again replaces what was known; nothing of it is left', async () => {
  await roster('C').put([FULL]);
  await roster('C').put([bare('WP-07')]);
  expect(await roster('C').all()).toEqual([bare('WP-07')]);
});

test('a removed person is gone, once', async () => {
  await roster('D').put([FULL, bare('WP-09')]);
  expect(await roster('D').remove('WP-07')).toBe(true);
  expect(await roster('D').remove('WP-07')).toBe(false);
  expect(await roster('D').all()).toEqual([bare('WP-09')]);
});

test('all or none: one person who cannot be kept leaves the roster as it was', async () => {
  const broken = { ...bare('WP-10'), toldBy: undefined } as unknown as PersonNeeds;
  await expect(roster('E').put([bare('WP-09'), broken])).rejects.toThrow();
  expect(await roster('E').all()).toEqual([]);
});

test('5,000 people are put and read, and workspaces do not see one another', async () => {
  const people = Array.from({ length: 5_000 }, (_, i) => bare(`XC-${String(i).padStart(4, '0')}`));
  await roster('F').put(people);
  expect(await roster('F').all()).toEqual(people);
  expect(await roster('G').all()).toEqual([]);
  expect(await roster('G').remove('XC-0001')).toBe(false);
});
