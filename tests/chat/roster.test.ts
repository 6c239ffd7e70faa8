import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Database } from '../../src/store/database.ts';
import { freshDatabase } from '../helpers/database.ts';
import { rosterKitchen } from '../helpers/roster-kitchen.ts';
import { at } from '../helpers/stock-kitchen.ts';

const NOW = at('2026-11-25 10:00');
let database: Database;
beforeAll(async () => {
  database = await freshDatabase();
});
afterAll(() => database.close());
const room = (file?: string) => rosterKitchen(database, NOW, file);

const FILE = `code,team,allergies,coeliac,vegan,likes
WP-01,water polo,peanut,,,oat bars
WP-02,water polo,,yes,,
WP-03,water polo,,,yes,
`;

describe('one person', () => {
  test('tells, changes, sees and deletes their own needs', async () => {
    const { read, kitchen, workspace } = await room();
    expect(await read('my needs: peanut, vegan, likes oat bars, 2 pieces', 'athlete', 'WP-07')).toContain(
      'Noted for WP-07: avoids peanut and animal products',
    );
    expect(await read('show my needs', 'athlete', 'WP-07')).toContain('Likes Oat bars. 2 pieces');
    const kept = async () => (await kitchen.rosters(workspace).get('WP-07'))?.avoid;
    expect(await read('my needs: egg', 'athlete', 'WP-07')).toContain(
      'Kept from before: peanut and animal products',
    );
    expect(await kept()).toEqual(['peanut', 'egg', 'animal']);
    expect(await read('my needs are only egg', 'athlete', 'WP-07')).toContain(
      'avoids egg. No longer kept: peanut and animal products.',
    );
    expect(await kept()).toEqual(['egg']);
    await read('my needs: 1 piece, likes oat bars', 'athlete', 'WP-07');
    expect(await read('show my needs', 'athlete', 'WP-07')).toContain('Avoids egg. Likes Oat bars. 1 piece.');
    expect(await read('delete my needs', 'athlete', 'WP-07')).toContain('nothing is kept of WP-07');
    expect(await kitchen.rosters(workspace).all()).toEqual([]);
    expect(await read('show my needs', 'athlete', 'WP-07')).toContain('No needs of yours are kept');
  });

  test('is told what contradicts itself, and what nobody can check', async () => {
    const { read } = await room();
    expect(await read('my needs: peanut, likes oat bars', 'athlete', 'WP-07')).toMatch(
      /contradict[\s\S]*Oat bars[\s\S]*peanut[\s\S]*avoided counts/,
    );
    expect(await read('my needs: none, egg', 'athlete', 'WP-07')).toContain('"None" was said beside egg');
    expect(await read('my needs: dragonfruit', 'athlete', 'WP-07')).toContain('no plan can check it');
    expect(await read('my needs: penut', 'athlete', 'WP-07')).toContain('avoids peanut');
    expect(await read('my needs: 99 pieces', 'athlete', 'WP-07')).toContain('at most 20');
  });

  test('loses no allergen of the roster to another word, and drops one when that is asked', async () => {
    const { ask, read, kitchen, workspace } = await room(FILE);
    await ask('import roster.csv');
    const kept = async () => (await kitchen.rosters(workspace).get('WP-01'))?.avoid;
    const say = (text: string) => read(text, 'athlete', 'WP-01');
    expect(await say('my needs: penicillin')).toContain('Kept from before: peanut');
    expect(await say('my needs: milk')).toContain('avoids peanut, milk and penicillin');
    expect(await kept()).toEqual(['peanut', 'milk']);
    expect(await say('remove soy from my needs')).toContain('nothing was changed');
    expect(await say('remove peanut from my needs')).toContain('No longer kept: peanut');
    expect(await kept()).toEqual(['milk']);
    expect(await say('add sesame to my needs')).toContain('milk, sesame');
    expect(await say('my needs: just milk')).toContain('No longer kept: sesame and penicillin');
    expect(await say('my needs: none')).toContain('No longer kept: milk');
    expect(await kept()).toEqual([]);
  });

  test('without a code is asked for it; a guest keeps nothing here', async () => {
    const { ask } = await room();
    expect((await ask('my needs: peanut', 'athlete', 'athlete')).error?.code).toBe('needs_more');
    expect((await ask('my needs: peanut', 'guest', 'U0123456')).error?.code).toBe('not_allowed');
  });

  test('sees an answer about a recipe for their own needs', async () => {
    const { ask } = await room();
    await ask('my needs: peanut', 'athlete', 'WP-07');
    const { answer } = await ask('can I eat the oat bars', 'athlete', 'WP-07');
    expect(answer?.data.avoid).toEqual(['peanut']);
    expect(answer?.audience).toBe('asker');
  });
});

describe('what others see', () => {
  test('staff see a person, only privately; interns and athletes do not', async () => {
    const { ask } = await room(FILE);
    await ask('import roster.csv');
    const { answer } = await ask('needs of WP-01');
    expect(answer?.title).toContain('peanut');
    expect(answer?.audience).toBe('asker');
    for (const role of ['intern', 'athlete', 'guest'] as const) {
      expect((await ask('needs of WP-01', role, 'WP-99')).error?.code).toBe('not_allowed');
      expect((await ask('delete needs of WP-01', role, 'WP-99')).error?.code).toBe('not_allowed');
      expect((await ask('WP-01 needs: egg', role, 'WP-99')).error?.code).toBe('not_allowed');
      expect((await ask('import roster.csv', role, 'WP-99')).error?.code).toBe('not_allowed');
    }
  });

  test('counts go to the kitchen, codes to staff alone', async () => {
    const { ask, read } = await room(FILE);
    await ask('import roster.csv');
    expect(await read('roster')).toContain('WP-01');
    const forIntern = await ask('roster', 'intern', 'IN-01');
    expect(JSON.stringify(forIntern.answer)).not.toContain('WP-0');
    expect(forIntern.answer?.title).toBe('3 on the roster, 3 with needs.');
    expect((await ask('roster', 'athlete', 'WP-01')).error?.code).toBe('not_allowed');
    expect(await read("who on the roster can't have peanut")).toContain('1 of 3');
    const can = await ask('can everyone on the roster eat the oat bars', 'intern', 'IN-01');
    expect(can.answer?.title).toContain('not for 3 of 3');
    expect(JSON.stringify(can.answer)).not.toContain('WP-0');
  });
});

describe('a file', () => {
  test('adds and changes people, and loses nothing they told themselves', async () => {
    const { ask, read, kitchen, workspace } = await room(FILE);
    await ask('my needs: sesame', 'athlete', 'WP-01');
    await ask('my needs: soy', 'athlete', 'WP-09');
    expect(await read('import roster.csv')).toMatch(
      /2 added, 1 changed[\s\S]*1 told more[\s\S]*1 not in the file/,
    );
    expect((await kitchen.rosters(workspace).get('WP-01'))?.avoid).toEqual(['peanut', 'sesame']);
    expect(await read('import roster.csv')).toContain('0 added, 0 changed, 3 unchanged');
  });

  test('of this machine is opened at the terminal only', async () => {
    const { read } = await room();
    expect(await read('import roster.csv')).toContain('There is no such file here');
    expect(await read('import roster')).toContain('Which file?');
  });

  test('of the demo kitchen has nothing to look at', async () => {
    const { readFileSync } = await import('node:fs');
    const demo = readFileSync(new URL('../../recipes/roster.csv', import.meta.url), 'utf8');
    const { answer } = await (await room(demo)).ask('import recipes/roster.csv');
    expect(answer?.data.problems).toEqual([]);
    expect(answer?.data.contradictions).toEqual([]);
  });
});

test('emergencies and medical questions still come first', async () => {
  const { ask } = await room();
  expect((await ask('my needs: help she is choking', 'athlete', 'WP-07')).intent).toBe('emergency');
});
