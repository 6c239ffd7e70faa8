import { existsSync } from 'node:fs';
import { Problem } from './nutrition/problem.ts';
import type { Memory } from './open-memory.ts';

/**
 * Copies the memory behind `url` to `file` while it may be in use.
 * @throws Problem `not_found` when there is none yet, `not_possible` on PostgreSQL or when `file` is there already.
 */
export async function backUp(memory: Memory, url: string, file: string): Promise<string> {
  const isFile = !/^postgres(ql)?:\/\//.test(url);
  if (isFile && !existsSync(url)) {
    throw new Problem(
      'not_found',
      `There is no memory at ${url} to copy.`,
      'Name the database with --db FILE, or start the kitchen in the folder that holds data/kitchen.db.',
    );
  }
  await (await memory.database()).backup(file);
  return `Copied to ${file} and checked. To restore: stop the kitchen and put a copy of it in the place of the database, as README says under Restore.`;
}
