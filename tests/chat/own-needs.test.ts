import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Database } from '../../src/store/database.ts';
import { freshDatabase } from '../helpers/database.ts';
import { type Asks, rosterKitchen } from '../helpers/roster-kitchen.ts';
import { at } from '../helpers/stock-kitchen.ts';

const NOW = at('2026-11-25 10:00');
const FILE = `code,team,allergies,coeliac,vegan,avoids
WP-01,water polo,peanut; tree nut,,,
WP-02,water polo,,yes,,
WP-03,water polo,,,yes,
WP-04,water polo,,,,honey
WP-05,water polo,,,,
`;
const MADE = [
  'chocolate date bars',
  'cherry bars',
  'oat bars',
  'sunflower cranberry bars',
  'seed trail mix',
].map((what) => `made 20 ${what} at 6:00`);

let database: Database;
let room: Asks;
beforeAll(async () => {
  database = await freshDatabase();
  room = await rosterKitchen(database, NOW, FILE);
  for (const line of ['import roster.csv', ...MADE]) expect((await room.ask(line)).error).toBeUndefined();
});
afterAll(() => database.close());

const ANYTHING = [
  'what can I eat',
  'what should I eat after lift',
  'which bars can I eat',
  "i'm hungry",
  'is there anything for me in the fridge',
  "what's in stock for me",
  'which bars can I have',
  'what recipes can I eat',
];

describe('whoever asks what to eat', () => {
  test.each(ANYTHING)('is offered nothing against what the roster keeps of them: %s', async (text) => {
    const said = await room.read(text, 'athlete', 'WP-01');
    expect(said).toContain('For the needs kept of you: peanut and tree nuts.');
    expect(said).toContain('Sunflower cranberry bars'.slice(1));
    expect(said).not.toMatch(/chocolate date|cherry oat|\d+ oat bars|- oat bars/i);
    expect((await room.ask(text, 'athlete', 'WP-01')).answer?.audience).toBe('asker');
  });

  test('a vegan is offered nothing of animals, and a food beyond the list counts too', async () => {
    expect(await room.read('what can I eat', 'athlete', 'WP-03')).not.toMatch(/cherry|sunflower cranberry/i);
    const said = await room.read('anything for me in the fridge', 'athlete', 'WP-04');
    expect(said).toContain('For the needs kept of you: honey.');
    expect(said).not.toMatch(/- 20 (?:oat bars|cherry oat bars)/);
  });

  test('is told when nothing is kept of them', async () => {
    expect(await room.read('what can I eat', 'athlete', 'WP-05')).toContain('No needs are kept of you');
    expect(await room.read('what can I eat', 'athlete', 'WP-77')).toContain(
      'Allergies not stated are not checked',
    );
  });

  test('what they add counts beside what is kept', async () => {
    const { answer } = await room.ask('can I eat the oat bars, sesame allergy', 'athlete', 'WP-01');
    expect(answer?.data.avoid).toEqual(['peanut', 'tree_nut', 'sesame']);
  });
});

const OF_OTHERS = [
  'which recipes can WP-01 eat',
  'can WP-01 eat the cherry bars',
  'what can WP-01 eat',
  'snack for WP-01 after lift',
  'is there anything for WP-01 in the fridge',
];

describe('a question for a code', () => {
  test.each(OF_OTHERS)('staff: by what is kept of that person: %s', async (text) => {
    const { answer } = await room.ask(text);
    expect(answer?.audience).toBe('asker');
    expect(answer?.data.forCode).toBe('WP-01');
    const said = await room.read(text);
    expect(said).toContain('For the needs kept of WP-01: peanut and tree nuts.');
    if (!text.includes('cherry'))
      expect(said).not.toMatch(/^- (?:20 )?(?:oat|cherry oat|chocolate date) bars(?:,|$)/im);
  });

  test.each(OF_OTHERS)('nobody else: %s', async (text) => {
    for (const role of ['intern', 'athlete'] as const) {
      const { answer, error } = await room.ask(text, role, role === 'intern' ? 'IN-01' : 'WP-02');
      expect(answer).toBeUndefined();
      expect(error?.code).toBe('not_allowed');
    }
  });

  test('a code nobody has is said to be none', async () => {
    expect(await room.read('what can WP-99 eat')).toContain('nothing is checked for that person');
  });

  test.each(['what allergies does WP-01 have', 'is WP-01 allergic to peanuts', 'what is WP-01 allergic to'])(
    'what is kept is shown to staff alone: %s',
    async (text) => {
      expect(await room.read(text)).toContain('WP-01: Avoids peanut and tree nuts.');
      expect((await room.ask(text, 'intern', 'IN-01')).error?.code).toBe('not_allowed');
    },
  );
});
