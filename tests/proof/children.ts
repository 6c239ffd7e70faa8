import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { serialize } from 'node:v8';
import { build } from 'esbuild';
import { openKitchen } from '../../src/open-kitchen.ts';
import type { ChildOrders } from './orders.ts';

const root = new URL('../../', import.meta.url).pathname;
/** Beside the program, so that packages are found; the next build clears it. */
const FOLDER = join(root, 'dist', 'proof');
export const BOOK_FILE = join(FOLDER, 'book.bin');
const CHILD = join(FOLDER, 'child.js');

/** Bundles the child and writes a book of one recipe, so that a child starts fast. */
export async function prepareChildren(): Promise<void> {
  mkdirSync(FOLDER, { recursive: true });
  await build({
    entryPoints: [join(root, 'tests/proof/child.ts')],
    outfile: CHILD,
    bundle: true,
    platform: 'node',
    format: 'esm',
    external: ['better-sqlite3', 'pg'],
    minify: true,
    logLevel: 'warning',
  });
  const { book } = await openKitchen({ nowMs: () => 0 });
  const recipe = book.recipes.get('oat-bars');
  if (!recipe) throw new Error('the demo kitchen has no oat-bars');
  const foods = recipe.lines.flatMap(({ foodId }) => {
    const food = book.foods.get(foodId);
    return food ? [[foodId, food] as const] : [];
  });
  const small = { ...book, recipes: new Map([[recipe.id, recipe]]), foods: new Map(foods) };
  writeFileSync(BOOK_FILE, serialize(small));
}

export interface Child {
  readonly process: ChildProcess;
  readonly lines: string[];
  readonly ready: Promise<void>;
  /** Resolves when that many lines have come. */
  wrote(count: number): Promise<void>;
  /** Resolves when the process is gone and all it wrote has been read. */
  readonly ended: Promise<void>;
}

export function startChild(orders: ChildOrders): Child {
  const child = spawn(process.execPath, [CHILD, JSON.stringify(orders)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const lines: string[] = [];
  const waiting: { count: number; resolve: () => void }[] = [];
  let rest = '';
  let becomeReady = (): void => {};
  const ready = new Promise<void>((resolve) => {
    becomeReady = resolve;
  });
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    const parts = (rest + text).split('\n');
    // A line that was cut off by the kill acknowledges nothing.
    rest = parts.pop() ?? '';
    lines.push(...parts);
    for (const { count, resolve } of waiting) if (lines.length >= count) resolve();
    if (parts.includes('ready')) becomeReady();
  });
  const ended = new Promise<void>((resolve) => child.on('close', () => resolve()));
  const wrote = (count: number): Promise<void> =>
    lines.length >= count
      ? Promise.resolve()
      : Promise.race([new Promise<void>((resolve) => waiting.push({ count, resolve })), ended]);
  return { process: child, lines, ready: Promise.race([ready, ended]), wrote, ended };
}
