import { expect, test } from 'vitest';
import { rosterWords } from '../../../src/chat/commands/roster/words.ts';
import { MOST_ROWS } from '../../../src/kitchen/roster/limits.ts';
import { readRoster } from '../../../src/kitchen/roster/read-roster.ts';
import { openKitchen } from '../../../src/open-kitchen.ts';

const { book } = await openKitchen({ nowMs: () => 0 });
const HEAD = 'code,member,team,allergies,coeliac,vegan,vegetarian,lactose,avoids,likes,pieces';
const read = (...lines: string[]) =>
  readRoster(new TextEncoder().encode([HEAD, ...lines].join('\n')), rosterWords(book), 7);
const problems = (...lines: string[]) =>
  read(...lines).problems.map(({ line, field }) => `${line} ${field ?? ''}`.trim());

test('a line says needs in its own columns and in words', () => {
  const { people, problems: none } = read(
    'wp-07,U012AB3CD,water polo,peanut; tree nut,yes,,,,kiwi,oat bars,2',
    'WP-08,,,,,x,,yes,,,',
    'WP-09,,,,,,,,,,',
  );
  expect(none).toEqual([]);
  expect(people).toEqual([
    {
      code: 'WP-07',
      member: 'U012AB3CD',
      team: 'water polo',
      avoid: ['peanut', 'tree_nut', 'gluten'],
      foods: ['kiwi'],
      likes: ['oat-bars'],
      pieces: 2,
      toldBy: 'file',
      updatedMs: 7,
    },
    { code: 'WP-08', avoid: ['lactose', 'animal'], foods: [], likes: [], toldBy: 'file', updatedMs: 7 },
    { code: 'WP-09', avoid: [], foods: [], likes: [], toldBy: 'file', updatedMs: 7 },
  ]);
});

test('a milk allergy and lactose intolerance stay two things', () => {
  const [milk, lactose] = read('WP-01,,,milk,,,,,,,', 'WP-02,,,,,,,yes,,,').people;
  expect(milk?.avoid).toEqual(['milk']);
  expect(lactose?.avoid).toEqual(['lactose']);
});

test('each problem has its line and field, and the good lines are kept', () => {
  const lines = [
    'WP-01,,,peanut,,,,,,,',
    'Somebody,,,peanut,,,,,,,',
    ',,,milk,,,,,,,',
    'WP-04,,,,,,,,,,-2',
    'WP-05,,,,,,,,,no such bars,',
    'WP-06,,,"egg,,,,,,,',
    'WP-07,milk',
    'WP-08,,,soy,,,,,,,',
  ];
  expect(problems(...lines)).toEqual(['3 code', '4 code', '5 pieces', '6 likes', '7', '8']);
  expect(read(...lines).people.map(({ code }) => code)).toEqual(['WP-01', 'WP-04', 'WP-05', 'WP-08']);
  for (const { message, hint } of read(...lines).problems) {
    expect(message.length).toBeGreaterThan(10);
    expect(hint).toMatch(/^(Write|Save|Type|Put|Keep)/);
  }
});

test('a need in doubt is kept, never dropped', () => {
  const lines = ['WP-01,,,penut,,,,,,,', 'WP-02,,,,maybe,,,,,,', 'WP-03,,,dragonfruit,,,,,,,'];
  expect(problems(...lines)).toEqual(['2 allergies', '3 coeliac', '4 allergies']);
  const [first, second, third] = read(...lines).people;
  expect(first?.avoid).toEqual(['peanut']);
  expect(second?.avoid).toEqual(['gluten']);
  expect(third?.foods).toEqual(['dragonfruit']);
});

test('contradictions are told and the stricter side counts', () => {
  expect(problems('WP-01,,,,,yes,no,,,,')).toEqual(['2 vegetarian']);
  const twice = ['WP-01,,,peanut,,,,,,,', 'WP-01,,,egg,,,,,,,'];
  expect(problems(...twice)).toEqual(['3 code']);
  expect(read(...twice).people.map(({ avoid }) => avoid)).toEqual([['peanut', 'egg']]);
});

test('5,000 people are read; too many lines and what is no text are refused with what to do', () => {
  const lines = Array.from({ length: 5_000 }, (_, i) => `XC-${i},,cross country,peanut,,,,,,,`);
  const { people, problems: none } = read(...lines);
  expect(people.length).toBe(5_000);
  expect(none).toEqual([]);
  const many = Array.from({ length: MOST_ROWS + 1 }, (_, i) => `XC-${i},,,,,,,,,,`);
  expect(() => read(...many)).toThrow(/at most/);
  expect(() => readRoster(new Uint8Array([0x50, 0x4b, 3, 4, 0]), rosterWords(book), 0)).toThrow(/not a text/);
  expect(readRoster(new Uint8Array(), rosterWords(book), 0).problems).toHaveLength(1);
});

test('without a code column nothing is taken and the columns are named', () => {
  const { people, problems: told } = readRoster(
    new TextEncoder().encode('name,allergies\nA,peanut\n'),
    rosterWords(book),
    0,
  );
  expect(people).toEqual([]);
  expect(told[0]?.hint).toContain('allergies');
});
