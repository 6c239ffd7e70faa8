import {
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { folderFingerprint, readBookImage, writeBookImage } from '../../src/book/book-image.ts';
import { loadBook } from '../../src/book/load-book.ts';
import { openBook } from '../../src/book/open-book.ts';
import { Problem } from '../../src/nutrition/problem.ts';
import { readUnit } from '../../src/nutrition/units/unit.ts';

const BUILT_IN = new URL('../../recipes', import.meta.url).pathname;
const root = mkdtempSync(join(tmpdir(), 'kitchens-'));
afterAll(() => rmSync(root, { recursive: true }));

let count = 0;
/** A kitchen's own folder with these files in it. */
function kitchen(files: Record<string, string | Buffer>): string {
  count += 1;
  const folder = join(root, `kitchen-${count}`);
  mkdirSync(folder);
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), content);
  }
  return folder;
}

const RIGHT = 'title: House bars\nyield: 10 bars\ningredients:\n  - 2 cups rolled oats\n  - 1/2 cup honey\n';
const load = (files: Record<string, string | Buffer>) => loadBook([BUILT_IN, kitchen(files)]);
const own = (files: Record<string, string | Buffer>) => {
  const book = load(files);
  return { book, problems: book.problems.filter(({ file }) => !file.startsWith('recipes/')) };
};

describe("a kitchen's own folder", () => {
  test('adds its recipe to those that come along', () => {
    const { book, problems } = own({ 'cards/house.yaml': RIGHT });
    expect(problems).toEqual([]);
    expect(book.recipes.get('house-bars')?.lines.map(({ massG }) => massG)).toEqual([162, 169.5]);
    expect(book.recipes.has('oat-bars')).toBe(true);
  });

  test.each(['house.yaml', 'recipes/house.yml', 'cards/autumn/house.yaml'])('may keep it in %s', (name) => {
    expect(own({ [name]: RIGHT }).book.recipes.has('house-bars')).toBe(true);
  });

  test('may keep several in one file', () => {
    const two = `recipes:\n  - title: A bars\n    yield: 2\n    ingredients: [1 cup oats]\n  - title: B bars\n    yield: 0\n    ingredients: [1 cup oats]\n`;
    const { book, problems } = own({ 'two.yaml': two });
    expect(book.recipes.has('a-bars')).toBe(true);
    expect(problems).toMatchObject([{ line: 6, field: 'yield' }]);
  });

  test('replaces a recipe of the same id', () => {
    const { book } = own({ 'cards/oats.yaml': RIGHT.replace('House bars', 'Oat bars') });
    expect(book.recipes.get('oat-bars')?.yieldPieces).toBe(10);
  });

  test('with built_in: replace cooks without the recipes and packages that come along', () => {
    const { book, problems } = own({
      'kitchen.yaml': 'built_in: replace\nname: Test kitchen\n',
      'cards/house.yaml': RIGHT,
    });
    expect([...book.recipes.keys()]).toEqual(['house-bars']);
    expect([...book.foods.values()].filter(({ product }) => product)).toEqual([]);
    expect(book.foods.has('rolled-oats')).toBe(true);
    expect(book.settings.name).toBe('Test kitchen');
    expect(problems).toEqual([]);
  });

  test('changes only the settings it names', () => {
    const { book } = own({ 'kitchen.yaml': 'time_zone: America/Denver\nmost_days: 5\n' });
    expect(book.settings).toMatchObject({
      timeZone: 'America/Denver',
      mostDays: 5,
      name: 'Alder Point Herons',
    });
  });

  test.each([
    ['time_zone: Mars/Base\n', 'time_zone', /not a time zone/, /America\/Chicago/],
    ['most_days: 9\n', 'most_days', /7 days at the most/, /1 to 7/],
    ['prep_time: soon\n', 'prep_time', /HH:MM/, /./],
    ['colour: red\n', 'colour', /not a setting/, /time_zone/],
    ['built_in: maybe\n', 'built_in', /add or replace/, /replace/],
    ['par: {nothing-bars: 3}\n', 'par.nothing-bars', /no recipe/, /oat-bars/],
  ])('is told what is wrong with the setting %j', (text, field, message, hint) => {
    const { book, problems } = own({ 'kitchen.yaml': text });
    expect(problems[0]).toMatchObject({
      field,
      message: expect.stringMatching(message),
      hint: expect.stringMatching(hint),
    });
    expect(book.recipes.has('oat-bars')).toBe(true);
  });
});

const BAD: readonly [string, string | Buffer, number | undefined, RegExp][] = [
  ['not YAML', 'title: [a\nyield: 12\n', 2, /not YAML/],
  ['a tab', 'title: A\ningredients:\n\t- 1 cup oats\n', 3, /not YAML/],
  ['empty', '', undefined, /empty/],
  ['binary', Buffer.from([1, 2, 0, 3]), undefined, /not a text file/],
  ['a missing food', RIGHT.replace('rolled oats', 'comet flakes'), 4, /no food called "comet flakes"/],
  ['an unknown unit', RIGHT.replace('2 cups', '2 bushels of'), 4, /./],
  ['a yield of nothing', RIGHT.replace('10 bars', '0 bars'), 2, /1 or more/],
  ['a negative yield', RIGHT.replace('10 bars', '-4'), 2, /less than nothing/],
  ['no yield', RIGHT.replace('yield: 10 bars\n', ''), 1, /yield is missing/],
  ['a number only', '12', 1, /does not hold a recipe/],
];

describe('one bad recipe is told and left out, and the rest works', () => {
  const files = Object.fromEntries(BAD.map(([name, text]) => [`cards/${name}.yaml`, text]));
  const { book, problems } = own({ ...files, 'cards/good.yaml': RIGHT.replace('House', 'Good') });

  test.each(BAD)('%s', (name, _text, line, message) => {
    const told = problems.filter(({ file }) => file.endsWith(`/cards/${name}.yaml`));
    expect(told).toHaveLength(1);
    expect(told[0]?.file).toMatch(/^kitchen-\d+\/cards\//);
    expect(told[0]?.message).toMatch(message);
    expect(told[0]?.hint).not.toBe('');
    expect(told[0]?.line).toBe(line);
  });

  test('the good one among them is there, none of the bad ones is', () => {
    expect(problems).toHaveLength(BAD.length);
    expect(book.recipes.has('good-bars')).toBe(true);
    expect(book.recipes.has('house-bars')).toBe(false);
  });

  test('a missing food comes with the nearest three', () => {
    const { problems } = own({ 'bad.yaml': RIGHT.replace('rolled oats', 'rolld oatz') });
    expect(problems[0]?.hint).toMatch(/^Nearest: Rolled oats; .+; .+\. Or/);
  });

  test('a volume of a food that has no portion asks for grams', () => {
    const isVolume = ({ unit }: { unit: string }) => readUnit(unit)?.kind === 'volume';
    const weighed = [...loadBook([BUILT_IN]).foods.values()].find(({ portions }) => !portions.some(isVolume));
    const { problems } = own({ 'bad.yaml': RIGHT.replace('1/2 cup honey', `1 cup ${weighed?.id}`) });
    expect(problems[0]?.hint).toMatch(/grams/);
  });

  test('the second of two recipes with one id', () => {
    const { book, problems } = own({ 'a.yaml': RIGHT, 'b.yaml': RIGHT.replace('10', '20') });
    expect(problems).toMatchObject([{ field: 'id', message: expect.stringContaining('already used by') }]);
    expect(book.recipes.get('house-bars')?.yieldPieces).toBe(10);
  });

  test('a link that leads round in a circle', () => {
    const folder = kitchen({ 'cards/house.yaml': RIGHT });
    symlinkSync(folder, join(folder, 'cards', 'again'));
    symlinkSync(join(folder, 'loop.yaml'), join(folder, 'loop.yaml'));
    const book = loadBook([BUILT_IN, folder]);
    expect(book.recipes.has('house-bars')).toBe(true);
    expect(book.problems).toMatchObject([{ message: 'This file cannot be read.' }]);
  });
});

describe('the folder itself', () => {
  test.each(['/nowhere/at/all', join(root, 'absent')])(
    'that is not there is a wrong option: %s',
    (folder) => {
      expect(() => loadBook([BUILT_IN, folder])).toThrow(Problem);
      expect(() => loadBook([BUILT_IN, folder])).toThrow(/There is no folder/);
    },
  );

  test('that is a file is a wrong option', () => {
    expect(() => loadBook([join(BUILT_IN, 'kitchen.yaml')])).toThrow(/is a file, not a folder/);
  });

  test('that is empty is a wrong option: the built-in recipes must not answer in its name', () => {
    expect(() => own({})).toThrow(/holds no kitchen/);
    expect(() => own({ 'notes.txt': 'bars on monday' })).toThrow(Problem);
    expect(own({ 'kitchen.yaml': 'par: {}\n' }).problems).toEqual([]);
  });
});

describe('the image the build leaves', () => {
  const image = join(root, 'book.json');
  const folder = kitchen({ 'cards/house.yaml': RIGHT, 'kitchen.yaml': 'par: {house-bars: 4}\n' });

  test('gives the same book as the folder', () => {
    const book = loadBook([BUILT_IN]);
    writeBookImage({ book, beside: ['words'] }, BUILT_IN, image);
    const again = readBookImage(BUILT_IN, image);
    expect(again).toEqual({ book, beside: ['words'] });
  });

  test('is not used when the folder has changed since', async () => {
    writeBookImage({ book: loadBook([BUILT_IN]), beside: undefined }, BUILT_IN, image);
    expect(readBookImage(folder, image)).toBeUndefined();
    const before = folderFingerprint(folder);
    writeFileSync(join(folder, 'cards/house.yaml'), RIGHT.replace('10', '11'));
    expect(folderFingerprint(folder)).not.toBe(before);
    expect((await openBook([folder], image)).book.problems.length).toBeGreaterThan(0);
  });

  test('is used again when files were only copied or touched, and not when a change kept size and time', () => {
    const card = join(folder, 'cards/house.yaml');
    const long = new Date('2026-01-01T12:00:00Z');
    utimesSync(card, long, long);
    const book = loadBook([BUILT_IN, folder]);
    writeBookImage({ book, beside: undefined }, folder, image, Date.now() + 60_000);
    utimesSync(card, new Date('2026-02-01T12:00:00Z'), long);
    expect(readBookImage(folder, image)).toBeDefined();
    const text = readFileSync(card, 'utf8');
    writeFileSync(card, text.replace('1', '2'));
    utimesSync(card, long, long);
    expect(readBookImage(folder, image)).toBeUndefined();
  });

  test('is not missed when it is not there or not whole', () => {
    writeFileSync(image, '{"fingerprint": ');
    expect(readBookImage(BUILT_IN, image)).toBeUndefined();
    expect(readBookImage(BUILT_IN, join(root, 'none.json'))).toBeUndefined();
  });
});
