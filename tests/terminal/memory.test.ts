import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { builtProgram, run } from '../helpers/program.ts';

let cwd = '';
beforeAll(builtProgram, 60_000);
beforeEach(() => {
  cwd = mkdtempSync(join(tmpdir(), 'batchbell-'));
});
afterEach(() => rmSync(cwd, { recursive: true, force: true }));

const program = (argv: readonly string[], input = '') => run(argv, input, [], cwd);

/** The memory under the current folder is what is tested here; on PostgreSQL there is none. */
const onSqlite = describe.skipIf((process.env.DATABASE_URL ?? '').startsWith('postgres'));

onSqlite("the kitchen's memory at the terminal", () => {
  test('is not made by a request that needs none', async () => {
    expect((await program(['macros oat bars'])).code).toBe(0);
    expect(existsSync(join(cwd, 'data'))).toBe(false);
  });

  test('is shared by one request after another', async () => {
    const made = await program(['--now', '2026-10-27T09:00', 'made 40 oat bars']);
    expect(made.stdout).toContain('batch B1');
    const lines = await program(['ask', '--now', '2026-10-27T14:00'], 'served 12 oat bars\nstock\n');
    expect(lines.stdout).toContain('28 can be served');
    expect(existsSync(join(cwd, 'data', 'kitchen.db'))).toBe(true);
  });

  test('that cannot be opened leaves the rest answering', async () => {
    writeFileSync(join(cwd, 'notes.txt'), 'order milk\n'.repeat(500));
    const { stdout, code } = await program(['ask', '--db', 'notes.txt'], 'stock\nmacros oat bars\n');
    expect(stdout).toMatch(/database cannot be opened[\s\S]*Oat bars/);
    expect(code).toBe(0);
  });

  test('a calendar asked for by a line is saved and said; as JSON it is said that it is not', async () => {
    const lines = 'game 2026-12-05 2pm vs Riverton\nexport schedule\n';
    const asJson = await program(['ask', '--json', '--now', '2026-11-25T09:00'], lines);
    expect(JSON.parse(asJson.stdout.split('\n')[1] ?? '').answer.text).toContain(
      'prep-schedule.ics is not saved by --json',
    );
    expect(readdirSync(cwd)).toEqual(['data']);
    const plain = await program(['ask', '--now', '2026-11-25T09:00'], lines);
    expect(plain.stdout).toContain('Saved in this folder: prep-schedule.ics');
    expect(readFileSync(join(cwd, 'prep-schedule.ics'), 'utf8')).toContain('SUMMARY:Game: vs Riverton');
  });

  test('is copied by "backup FILE", and the copy can be started with', async () => {
    await program(['--now', '2026-10-27T09:00', 'made 40 oat bars']);
    const copied = await program(['backup', 'copy.db']);
    expect(copied.stdout).toContain('Copied to copy.db');
    expect(readdirSync(cwd).sort()).toEqual(['copy.db', 'data']);
    const stock = await program(['--db', 'copy.db', '--now', '2026-10-27T14:00', 'stock']);
    expect(stock.stdout).toContain('40 can be served');
    const again = await program(['backup', 'copy.db']);
    expect([again.code, again.stderr]).toEqual([2, expect.stringContaining('there already')]);
  });

  test('is not invented by a backup of nothing', async () => {
    const { code, stderr } = await program(['backup', 'copy.db']);
    expect([code, stderr]).toEqual([2, expect.stringContaining('no memory')]);
    expect((await program(['backup'])).stderr).toContain('needs a file');
    expect(existsSync(join(cwd, 'data'))).toBe(false);
  });
});
