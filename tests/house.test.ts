import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { describe, expect, test } from 'vitest';

/** Which room may use which: the arrows of the house. `main.ts` and `config.ts` stand above all rooms. */
const MAY_USE: Record<string, readonly string[]> = {
  nutrition: [],
  book: ['nutrition'],
  kitchen: ['nutrition'],
  store: ['kitchen', 'nutrition'],
  net: ['kitchen', 'nutrition'],
  chat: ['kitchen', 'nutrition'],
  terminal: ['chat', 'kitchen', 'nutrition'],
  slack: ['chat', 'kitchen'],
};

const src = new URL('../src', import.meta.url).pathname;
const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter((f) => f.endsWith('.ts'));

const importsOf = (file: string): string[] => {
  const text = readFileSync(join(src, file), 'utf8');
  return [...text.matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g)].map((m) => m[1] ?? '');
};

describe('the house', () => {
  test('has rooms to look at', () => {
    expect(files.length).toBeGreaterThan(5);
  });

  test('no room reaches against its arrows', () => {
    const wrong: string[] = [];
    for (const file of files) {
      const room = file.split('/')[0] ?? '';
      const allowed = MAY_USE[room];
      if (!file.includes('/') || allowed === undefined) continue;
      for (const target of importsOf(file).filter((t) => t.startsWith('.'))) {
        const other = relative(src, join(src, dirname(file), target)).split('/')[0] ?? '';
        if (other !== room && !allowed.includes(other)) wrong.push(`${file} -> ${target}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  test('only store knows SQL, only slack knows Bolt, and nutrition knows no clock', () => {
    const wrong: string[] = [];
    for (const file of files) {
      const room = file.split('/')[0];
      const text = readFileSync(join(src, file), 'utf8');
      for (const target of importsOf(file)) {
        if (/^(kysely|better-sqlite3|pg)$/.test(target) && room !== 'store')
          wrong.push(`${file} imports ${target}`);
        if (target.startsWith('@slack/') && room !== 'slack') wrong.push(`${file} imports ${target}`);
        if (room === 'nutrition' && /^(node:|temporal)/.test(target)) wrong.push(`${file} imports ${target}`);
      }
      if (room === 'nutrition' && /\bDate\.now\(|new Date\(\)/.test(text))
        wrong.push(`${file} reads the clock`);
    }
    expect(wrong).toEqual([]);
  });
});
