import { existsSync, renameSync, rmSync } from 'node:fs';
import BetterSqlite from 'better-sqlite3';
import { Problem } from '../nutrition/problem.ts';
import { storeProblem } from './store-problem.ts';

/**
 * Copies an open database to `file` page by page while others go on writing (SQLite's online backup), checks the copy,
 * and only then gives it its name: a half copy never looks like a whole one.
 * @throws Problem `not_possible` when the file is there already, `unavailable` when it cannot be written.
 */
export async function backUpSqlite(handle: BetterSqlite.Database, file: string): Promise<void> {
  if (existsSync(file)) {
    throw new Problem(
      'not_possible',
      `${file} is there already.`,
      'Choose another name; a backup overwrites nothing.',
    );
  }
  const part = `${file}.part`;
  try {
    await handle.backup(part);
    check(part);
    renameSync(part, file);
  } catch (error) {
    rmSync(part, { force: true });
    throw told(error, file);
  } finally {
    // Reading a copy in WAL mode makes these; without the copy they belong to nothing.
    for (const beside of ['-wal', '-shm']) rmSync(`${part}${beside}`, { force: true });
  }
}

function check(part: string): void {
  const copy = new BetterSqlite(part, { readonly: true });
  try {
    const found = copy.pragma('quick_check', { simple: true });
    if (found !== 'ok')
      throw new Problem(
        'unavailable',
        `The copy is damaged: ${String(found)}.`,
        'Check the disk and try again.',
      );
  } finally {
    copy.close();
  }
}

function told(error: unknown, file: string): unknown {
  const known = storeProblem(error);
  if (known instanceof Problem) return known;
  const reason = error instanceof Error ? error.message : String(error);
  return new Problem(
    'unavailable',
    `${file} cannot be written: ${reason}.`,
    'Choose a file in a folder this user may write to.',
  );
}
