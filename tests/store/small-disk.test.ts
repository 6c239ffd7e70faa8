import { join } from 'node:path';
import BetterSqlite from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, type TestContext, test } from 'vitest';
import { type Chat, createChat } from '../../src/chat/chat.ts';
import { plainText } from '../../src/chat/plain-text.ts';
import { Problem } from '../../src/nutrition/problem.ts';
import { lazyMemory, type Memory } from '../../src/open-memory.ts';
import { openDatabase } from '../../src/store/database.ts';
import { type SmallDisk, smallDisk } from '../helpers/small-disk.ts';
import { at, book } from '../helpers/stock-kitchen.ts';

const isPostgres = (process.env.DATABASE_URL ?? '').startsWith('postgres');
const nowMs = at('2026-11-02 09:30');
const KILOBYTES = 1_024;

let disk: SmallDisk | string;
beforeEach(() => {
  disk = smallDisk(KILOBYTES);
});
afterEach(() => {
  if (typeof disk !== 'string') disk.remove();
});

/** The disk, or a test that is skipped and says why. */
function mounted({ skip }: TestContext): SmallDisk {
  if (typeof disk === 'string') return skip(disk);
  return disk;
}

const problemOf = async (doing: Promise<unknown>): Promise<Problem> => {
  const error = await doing.then(
    () => undefined,
    (thrown: unknown) => thrown,
  );
  expect(error).toBeInstanceOf(Problem);
  return error as Problem;
};

/** The demo kitchen on a memory; settings that cannot be looked up are reported and left, anything else unexpected fails the test. */
function talk(memory: Memory) {
  const chat: Chat = createChat({ ...memory, book, clock: { nowMs: () => nowMs } }, (error) => {
    if (!(error instanceof Problem)) throw error;
    return 'id';
  });
  let count = 0;
  return async (text: string) => {
    count += 1;
    const { answer, error } = await chat.ask({
      text,
      asker: { role: 'staff', who: 'ST-01', workspace: 'W' },
      conversation: 'c',
      isPrivate: true,
      nowMs: nowMs + count * 60_000,
    });
    return { said: answer ? plainText(answer) : '', data: answer?.data, error };
  };
}

describe.skipIf(isPostgres)('a disk that is really full', () => {
  test('nothing acknowledged is lost, the error says what to do, what needs no memory goes on, and so does all once there is room', async (context) => {
    const { folder, fill, makeRoom } = mounted(context);
    const file = join(folder, 'kitchen.db');
    const memory = lazyMemory(file, () => nowMs);
    const say = talk(memory);
    expect((await say('made 40 oat bars')).error).toBeUndefined();
    fill();
    let acknowledged = 1;
    let refused: Awaited<ReturnType<typeof say>>['error'];
    for (let i = 0; i < 300 && !refused; i++) {
      const { error } = await say('made 40 oat bars');
      if (error) refused = error;
      else acknowledged += 1;
    }
    expect(refused).toMatchObject({
      code: 'unavailable',
      message: expect.stringContaining("The disk of the kitchen's memory is full. Nothing was written"),
      hint: expect.stringContaining('Free some space'),
    });
    expect((await say('40 oat bars')).said).toContain('Protein a bar');
    const pieces = async (): Promise<number> =>
      (await memory.ledgers('W').holdings()).reduce((sum, holding) => sum + holding.pieces, 0);
    expect(await pieces()).toBe(40 * acknowledged);
    for (const text of [
      'game Sat 2pm vs Riverton',
      'fridge A 39F',
      'remind us friday 3pm to soak dates',
      'undo',
    ]) {
      expect([text, (await say(text)).error?.code]).toEqual([text, 'unavailable']);
    }
    expect(await pieces()).toBe(40 * acknowledged);

    makeRoom();
    expect((await say('made 40 oat bars')).error).toBeUndefined();
    expect((await say('game Sat 2pm vs Riverton')).error).toBeUndefined();
    expect(await pieces()).toBe(40 * (acknowledged + 1));
    await memory.close();
    const raw = new BetterSqlite(file, { readonly: true });
    expect(raw.pragma('integrity_check', { simple: true })).toBe('ok');
    raw.close();
  });

  test('a new memory is not opened on it: the hint is about the disk, and it opens once there is room', async (context) => {
    const { folder, fill, makeRoom } = mounted(context);
    const file = join(folder, 'kitchen.db');
    fill();
    const { code, hint } = await problemOf(openDatabase(file));
    expect([code, hint]).toEqual(['unavailable', expect.stringContaining('disk is full: free some space')]);
    makeRoom();
    const database = await openDatabase(file);
    expect(await database.answers()).toBe(true);
    await database.close();
  });

  test('a memory that was there is told apart from a damaged one, and is whole afterwards', async (context) => {
    const { folder, fill, makeRoom } = mounted(context);
    const file = join(folder, 'kitchen.db');
    const before = lazyMemory(file, () => nowMs);
    expect((await talk(before)('made 40 oat bars')).error).toBeUndefined();
    await before.close();
    fill();
    const during = lazyMemory(file, () => nowMs);
    const { error } = await talk(during)('made 12 oat bars');
    expect([error?.code, error?.hint]).toEqual(['unavailable', expect.stringMatching(/free some space/i)]);
    makeRoom();
    expect((await talk(during)('made 12 oat bars')).error).toBeUndefined();
    const held = (await during.ledgers('W').holdings()).map(({ pieces }) => pieces);
    expect(held.sort()).toEqual([12, 40]);
    await during.close();
  });
});

describe.skipIf(isPostgres)('a disk that nobody may write to', () => {
  test('is refused with what to do, the memory is as it was, and all goes on once it is writable', async (context) => {
    const { folder, writable } = mounted(context);
    const file = join(folder, 'kitchen.db');
    const before = lazyMemory(file, () => nowMs);
    expect((await talk(before)('made 40 oat bars')).error).toBeUndefined();
    await before.close();
    writable(false);
    const memory = lazyMemory(file, () => nowMs);
    const say = talk(memory);
    const { error } = await say('made 12 oat bars');
    expect([error?.code, error?.hint]).toEqual(['unavailable', expect.stringContaining('may write')]);
    expect((await say('40 oat bars')).said).toContain('Protein a bar');
    writable(true);
    expect((await say('made 12 oat bars')).error).toBeUndefined();
    expect((await memory.ledgers('W').holdings()).map(({ pieces }) => pieces).sort()).toEqual([12, 40]);
    await memory.close();
  });
});
