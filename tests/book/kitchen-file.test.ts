import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { MOST_BYTES, readKitchenFile, readKitchenText } from '../../src/book/kitchen-file.ts';

const folder = mkdtempSync(join(tmpdir(), 'kitchen-file-'));
afterAll(() => rmSync(folder, { recursive: true }));

const onDisk = (name: string, content: string | Buffer) => {
  const path = join(folder, name);
  writeFileSync(path, content);
  return readKitchenFile(path);
};

const complaintOf = (file: ReturnType<typeof readKitchenText>) => {
  if (file.ok) throw new Error('expected a complaint');
  return { ...file.complaint, line: file.line };
};

describe('a file of the kitchen folder', () => {
  test('keeps fractions and dates as they are written', () => {
    const file = readKitchenText('amount: 1/2\nversion: 2026-08-17\n');
    expect(file.ok && file.value).toEqual({ amount: '1/2', version: '2026-08-17' });
  });

  test('knows the line of a field, of an item, and of what should hold a missing field', () => {
    const file = readKitchenText(
      'title: Bars\nyield: 12\ningredients:\n  - 2 cups oats\n  - food: milk\n    amount: 1\n',
    );
    if (!file.ok) throw new Error('expected a reading');
    expect(file.lineOf(['yield'])).toBe(2);
    expect(file.lineOf(['ingredients', 0])).toBe(4);
    expect(file.lineOf(['ingredients', 1, 'amount'])).toBe(6);
    expect(file.lineOf(['ingredients', 1, 'unit'])).toBe(5);
  });

  test('says which line is not YAML', () => {
    const { line, message } = complaintOf(readKitchenText('title: Bars\nyield: [12\nmethod: x\n'));
    expect(message).toMatch(/^This is not YAML/);
    expect(line).toBeGreaterThanOrEqual(2);
  });

  test('advises spaces where somebody indented with a tab', () => {
    const { hint } = complaintOf(readKitchenText('title: Bars\ningredients:\n\t- 2 cups oats\n'));
    expect(hint).toMatch(/spaces/);
  });

  test('advises quotes where a text holds a colon', () => {
    const { line, hint } = complaintOf(readKitchenText('title: Bars\nnote: Bake: 20 minutes\n'));
    expect(line).toBe(2);
    expect(hint).toMatch(/quotes/);
  });

  test('says that a field stands twice', () => {
    const { line, hint } = complaintOf(readKitchenText('title: A\ntitle: B\n'));
    expect(line).toBe(2);
    expect(hint).toBe('Keep one of the two.');
  });

  test('does not expand a bomb of aliases', () => {
    const levels = ['a: &a [x, x, x, x, x, x, x, x, x]'];
    for (let i = 1; i < 9; i += 1) {
      const before = String.fromCharCode(96 + i);
      const name = String.fromCharCode(97 + i);
      levels.push(`${name}: &${name} [${Array(9).fill(`*${before}`).join(', ')}]`);
    }
    const startedMs = performance.now();
    const { message } = complaintOf(readKitchenText(levels.join('\n')));
    expect(message).toMatch(/anchors/);
    expect(performance.now() - startedMs).toBeLessThan(2000);
  });

  test('allows an anchor or two', () => {
    const file = readKitchenText('base: &oats 2 cups oats\nagain: *oats\n');
    expect(file.ok && file.value).toEqual({ base: '2 cups oats', again: '2 cups oats' });
  });

  test.each([
    ['empty', '', /empty/],
    ['only comments', '# nothing yet\n', /only comments/],
    ['binary', Buffer.from([0x89, 0x50, 0, 1, 2]), /not a text file/],
    ['not UTF-8', Buffer.from([0x74, 0x3a, 0x20, 0xff, 0xfe]), /not a text file/],
    ['larger than a megabyte', 'a'.repeat(MOST_BYTES + 1), /larger than 1 MB/],
  ])('refuses a file that is %s', (name, content, message) => {
    expect(complaintOf(onDisk(`${name}.yaml`, content)).message).toMatch(message);
  });

  test('refuses a file that is not there', () => {
    expect(complaintOf(readKitchenFile(join(folder, 'gone.yaml'))).message).toMatch(/cannot be read/);
  });
});
