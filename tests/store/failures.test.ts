import { chmodSync, existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import BetterSqlite from 'better-sqlite3';
import { sql } from 'kysely';
import { afterEach, describe, expect, test } from 'vitest';
import { recordMade } from '../../src/kitchen/stock/record-made.ts';
import { Problem } from '../../src/nutrition/problem.ts';
import { lazyMemory } from '../../src/open-memory.ts';
import { openDatabase } from '../../src/store/database.ts';
import { ledgersIn } from '../../src/store/ledger.ts';
import { freshPlace } from '../helpers/database.ts';
import { at, book, recipe } from '../helpers/stock-kitchen.ts';

const isPostgres = (process.env.DATABASE_URL ?? '').startsWith('postgres');
const folders: string[] = [];
const folder = (): string => {
  const made = mkdtempSync(join(tmpdir(), 'batchbell-'));
  folders.push(made);
  return made;
};
afterEach(() => {
  for (const made of folders.splice(0)) {
    chmodSync(made, 0o755);
    rmSync(made, { recursive: true, force: true });
  }
});

const nowMs = at('2026-11-02 09:30');
const make = (ledger: ReturnType<ReturnType<typeof ledgersIn>>) =>
  recordMade(
    { ledger, book, nowMs },
    { who: 'IN-01', atMs: nowMs, batches: [{ recipe: recipe('oat-bars'), pieces: 40, lots: [] }] },
  );
const problemOf = async (doing: Promise<unknown>): Promise<Problem> => {
  const error = await doing.then(
    () => undefined,
    (thrown: unknown) => thrown,
  );
  expect(error).toBeInstanceOf(Problem);
  return error as Problem;
};

describe.skipIf(isPostgres)('a SQLite memory', () => {
  test('that is full writes nothing, says so, and goes on once there is space', async () => {
    const database = await openDatabase(join(folder(), 'kitchen.db'));
    const ledger = ledgersIn(database, () => nowMs)('W');
    const { rows } = await sql<{ page_count: number }>`pragma page_count`.execute(database.db);
    await sql.raw(`pragma max_page_count = ${rows[0]?.page_count ?? 0}`).execute(database.db);
    let full: Problem | undefined;
    let made = 0;
    // The file has some room in its last pages; a bounded number of batches uses it up.
    for (let i = 0; i < 300 && !full; i++) {
      await make(ledger).then(
        () => made++,
        (error: Problem) => {
          full = error;
        },
      );
    }
    expect(full).toMatchObject({ code: 'unavailable' });
    expect(full?.message).toContain('full');
    expect(await ledger.holdings()).toHaveLength(made);
    await sql.raw('pragma max_page_count = 1000000').execute(database.db);
    await make(ledger);
    expect(await ledger.holdings()).toHaveLength(made + 1);
    await database.close();
  });

  test('that became read-only answers what is there and refuses what is new', async () => {
    const database = await openDatabase(join(folder(), 'kitchen.db'));
    const ledger = ledgersIn(database, () => nowMs)('W');
    await make(ledger);
    await sql.raw('pragma query_only = on').execute(database.db);
    const { code, message } = await problemOf(make(ledger));
    expect([code, message]).toEqual(['unavailable', expect.stringContaining('read-only')]);
    expect(await ledger.holdings()).toHaveLength(1);
    await database.close();
  });

  test('that is no database is refused with what to do, and left as it was', async () => {
    const file = join(folder(), 'notes.txt');
    writeFileSync(file, 'order milk\n'.repeat(500));
    const { hint } = await problemOf(openDatabase(file));
    expect(hint).toContain('--db');
  });

  test('is not opened, nor its file made, before something is remembered', async () => {
    const file = join(folder(), 'kitchen.db');
    const memory = lazyMemory(file, () => nowMs);
    const ledger = memory.ledgers('W');
    expect(existsSync(file)).toBe(false);
    expect(await ledger.holdings()).toEqual([]);
    expect(existsSync(file)).toBe(true);
    await memory.close();
  });

  test('that cannot be opened is tried again at the next request', async () => {
    const place = folder();
    const file = join(place, 'sub', 'deeper', 'kitchen.db');
    const memory = lazyMemory(file, () => nowMs);
    expect((await problemOf(memory.ledgers('W').holdings())).code).toBe('unavailable');
    const { mkdirSync } = await import('node:fs');
    mkdirSync(join(place, 'sub', 'deeper'), { recursive: true });
    expect(await memory.ledgers('W').holdings()).toEqual([]);
    await memory.close();
  });

  test('is copied while it is written, the copy is whole, and nothing is overwritten', async () => {
    const place = folder();
    const database = await openDatabase(join(place, 'kitchen.db'));
    const ledger = ledgersIn(database, () => nowMs)('W');
    for (let i = 0; i < 20; i++) await make(ledger);
    const file = join(place, 'copy.db');
    const writing = Promise.all(Array.from({ length: 10 }, () => make(ledger)));
    await database.backup(file);
    await writing;
    expect((await problemOf(database.backup(file))).code).toBe('not_possible');
    await database.close();
    const copy = await openDatabase(file);
    const held = await ledgersIn(copy, () => nowMs)('W').holdings();
    expect(held.length).toBeGreaterThanOrEqual(20);
    await copy.close();
    const raw = new BetterSqlite(file, { readonly: true });
    expect(raw.pragma('integrity_check', { simple: true })).toBe('ok');
    raw.close();
    expect(existsSync(`${file}.part`)).toBe(false);
  });
});

describe.runIf(isPostgres)('a PostgreSQL memory', () => {
  test('whose connections are cut in mid-transaction loses the entry whole, and the next one works', async () => {
    const place = await freshPlace();
    const lost: Error[] = [];
    const database = await openDatabase(place.url, (error) => lost.push(error));
    const ledger = ledgersIn(database, () => nowMs)('W');
    await make(ledger);
    const cut = ledger.write(async (writer) => {
      const [pid] = (await sql<{ pid: number }>`select pg_backend_pid() as pid`.execute(database.db)).rows;
      expect(pid).toBeDefined();
      await writer.holdings();
      await sql`select pg_terminate_backend(pid) from pg_stat_activity
        where pid <> pg_backend_pid() and state like 'idle in transaction%'
          and query_start > now() - interval '1 minute'
          and pid in (select pid from pg_locks where locktype = 'advisory')`.execute(database.db);
      await writer.append({
        event: { id: writer.newId(), kind: 'counted', who: 'IN-01', atMs: nowMs, recordedMs: nowMs },
      });
    });
    const { code, message } = await problemOf(cut);
    expect([code, message]).toEqual(['unavailable', expect.stringContaining('lost')]);
    await make(ledger);
    expect(await ledger.holdings()).toHaveLength(2);
    await database.close();
    await place.remove();
  });

  test('that is not there is refused with what to do', async () => {
    const { code, hint } = await problemOf(openDatabase('postgres://nobody@127.0.0.1:1/none'));
    expect([code, hint]).toEqual(['unavailable', expect.stringContaining('DATABASE_URL')]);
  });
});
