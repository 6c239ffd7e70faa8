import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import type { NewReminder, ReminderBook } from '../../src/kitchen/reminders/reminder-book.ts';
import type { ReminderQueue } from '../../src/kitchen/reminders/reminder-queue.ts';
import type { Database } from '../../src/store/database.ts';
import { reminderBooksIn } from '../../src/store/reminders/book.ts';
import { reminderQueuesIn } from '../../src/store/reminders/queue.ts';
import { freshDatabase } from '../helpers/database.ts';

const NOW = Date.parse('2026-12-04T14:00:00Z');
const HOUR = 3_600_000;
const LEASE = 60_000;

const databases: Database[] = [];
let book: ReminderBook;
let queue: ReminderQueue;
let database: Database;

beforeEach(async () => {
  database = await freshDatabase();
  databases.push(database);
  book = reminderBooksIn(database)('W');
  queue = reminderQueuesIn(database)('W');
});
afterAll(async () => {
  for (const opened of databases) await opened.close();
});

const due = (key: string, dueMs = NOW, more: Partial<NewReminder> = {}): NewReminder => ({
  key,
  kind: 'own',
  audience: 'kitchen',
  dueMs,
  helpsUntilMs: dueMs + HOUR,
  about: { task: key },
  planned: true,
  ...more,
});
const claim = (by: string, nowMs = NOW, most = 10) => ({ by, nowMs, leaseMs: LEASE, most });
const stateOf = async (code: string) => (await book.byCode(code))?.state;

describe('planning', () => {
  test('adds once, moves what changed, cancels what is no longer wanted', async () => {
    expect(await book.plan([due('a', NOW + 1), due('b', NOW + 2)], NOW)).toEqual({
      added: 2,
      moved: 0,
      cancelled: 0,
    });
    expect(await book.plan([due('a', NOW + 1), due('b', NOW + 2)], NOW)).toEqual({
      added: 0,
      moved: 0,
      cancelled: 0,
    });
    expect(await book.plan([due('a', NOW + 5)], NOW)).toEqual({ added: 0, moved: 1, cancelled: 1 });
    expect((await book.upcoming(9)).map((r) => [r.key, r.dueMs, r.code])).toEqual([['a', NOW + 5, 'R1']]);
  });

  test('what was called off and is wanted again comes back', async () => {
    await book.plan([due('a', NOW + 1)], NOW);
    await book.plan([], NOW);
    expect(await stateOf('R1')).toBe('cancelled');
    expect(await book.plan([due('a', NOW + 9)], NOW)).toEqual({ added: 0, moved: 1, cancelled: 0 });
    expect(await book.byCode('r1')).toMatchObject({ state: 'pending', dueMs: NOW + 9 });
  });

  test('leaves alone what a person moved or cancelled, and what was told', async () => {
    await book.plan([due('moved', NOW + 1), due('cancelled', NOW + 1), due('told', NOW)], NOW);
    await book.move('x', { dueMs: 1, helpsUntilMs: 2 }, 'person');
    const [moved, cancelled] = await Promise.all([book.byCode('R1'), book.byCode('R2')]);
    expect(await book.move(moved?.id ?? '', { dueMs: NOW + 70, helpsUntilMs: NOW + 80 }, 'person')).toBe(
      true,
    );
    expect(await book.cancel(cancelled?.id ?? '', 'WP-01')).toBe(true);
    await queue.claimDue(claim('i1'));
    await book.plan([due('moved', NOW + 1), due('cancelled', NOW + 1), due('told', NOW + 99)], NOW);
    expect((await book.byCode('R1'))?.dueMs).toBe(NOW + 70);
    expect(await stateOf('R2')).toBe('cancelled');
    expect(await book.byCode('R3')).toMatchObject({ state: 'claimed', dueMs: NOW });
    expect(await book.cancel((await book.byCode('R3'))?.id ?? '', 'WP-01')).toBe(false);
  });

  test('does not cancel what is overdue: it is on its way', async () => {
    await book.plan([due('a', NOW + 1)], NOW);
    expect(await book.plan([], NOW + 1)).toEqual({ added: 0, moved: 0, cancelled: 0 });
  });

  test('two instances that plan at once add each thing once, with codes of its own', async () => {
    const wanted = Array.from({ length: 40 }, (_, n) => due(`k${n}`, NOW + 1 + n));
    const planned = await Promise.all([1, 2, 3].map(() => book.plan(wanted, NOW)));
    expect(planned.map((p) => p.added).sort()).toEqual([0, 0, 40]);
    expect(new Set((await book.upcoming(99)).map((r) => r.code)).size).toBe(40);
  });
});

describe('claiming', () => {
  test('takes what is due and still helps, earliest first, each once', async () => {
    await book.plan(
      [due('late', NOW - 3 * HOUR), due('b', NOW - 1), due('a', NOW - 2), due('later', NOW + 1)],
      NOW,
    );
    const claims = await Promise.all(['i1', 'i2', 'i3'].map((by) => queue.claimDue(claim(by))));
    expect(claims.flat().map((r) => r.key)).toEqual(['a', 'b']);
    expect(await queue.claimDue(claim('i4'))).toEqual([]);
  });

  test('another workspace is not touched', async () => {
    await book.add(due('a'), NOW);
    expect(await reminderQueuesIn(database)('V').claimDue(claim('i1'))).toEqual([]);
  });

  test('a claim whose holder died comes back after its lease, and only then', async () => {
    await book.add(due('a'), NOW);
    const [first] = await queue.claimDue(claim('dead'));
    expect(await queue.sweep(NOW + LEASE)).toBe(0);
    expect(await queue.sweep(NOW + LEASE + 1)).toBe(1);
    const [again] = await queue.claimDue(claim('i2', NOW + LEASE + 1));
    expect(again?.key).toBe('a');
    if (!first || !again) throw new Error('not claimed');
    expect(await queue.enqueue(first, 'dead', '{}', NOW), 'the dead one wakes up').toBe(false);
    expect(await queue.enqueue(again, 'i2', '{}', NOW)).toBe(true);
  });
});

describe('the outbox', () => {
  async function message(key = 'a') {
    await book.add(due(key), NOW);
    for (const reminder of await queue.claimDue(claim('i1'))) {
      await queue.enqueue(reminder, 'i1', '{"title":"x"}', NOW);
    }
  }

  test('a message is held by one sender; the attempt counts at the claim', async () => {
    await message();
    const [held] = await queue.claimMessages(claim('s1'));
    expect(held).toMatchObject({ attempts: 1, maybeSent: false, body: '{"title":"x"}', audience: 'kitchen' });
    expect(held?.reminder?.key).toBe('a');
    expect(await queue.claimMessages(claim('s2'))).toEqual([]);
    if (!held) throw new Error('not claimed');
    expect(await queue.recordSent(held, 's2', NOW, 'ref')).toBe(false);
    expect(await queue.recordSent(held, 's1', NOW + 5, 'C1 17.5')).toBe(true);
    expect(await book.byCode('R1')).toMatchObject({ state: 'sent', sentMs: NOW + 5 });
  });

  test('a sender that died may have sent: the message comes back marked so', async () => {
    await message();
    await queue.claimMessages(claim('dead'));
    expect(await queue.sweep(NOW + LEASE + 1)).toBe(1);
    expect(await queue.claimMessages(claim('s2', NOW + LEASE + 1))).toMatchObject([
      { attempts: 2, maybeSent: true },
    ]);
  });

  test('a failed attempt waits; a pause asked for gives the rest back uncounted', async () => {
    await message('a');
    await message('b');
    const [a, b] = await queue.claimMessages(claim('s1'));
    if (!a || !b) throw new Error('not claimed');
    await queue.recordRetry(a, 's1', { nextAttemptMs: NOW + 30, maybeSent: false, problem: 'ratelimited' });
    await queue.giveBack([b], 's1', NOW + 30);
    expect(await queue.claimMessages(claim('s1', NOW + 29))).toEqual([]);
    expect(
      (await queue.claimMessages(claim('s1', NOW + 30))).map((m) => [m.attempts, m.maybeSent]).sort(),
    ).toEqual([
      [1, false],
      [2, false],
    ]);
  });

  test('what a surface refuses is kept with its reason', async () => {
    await message();
    const [held] = await queue.claimMessages(claim('s1'));
    if (!held) throw new Error('not claimed');
    await queue.recordRefused(held, 's1', 'not_in_channel');
    expect(await queue.claimMessages(claim('s1', NOW + HOUR))).toEqual([]);
    expect(await book.undelivered(NOW - HOUR)).toMatchObject([
      { reminder: { key: 'a' }, problem: 'not_in_channel' },
    ]);
  });

  test('a message that comes too late is listed as missed, once, by one of several instances', async () => {
    await message();
    const late = NOW + 2 * HOUR;
    const [held] = await queue.claimMessages(claim('s1', late));
    if (!held) throw new Error('not claimed');
    await queue.withdraw(held, 's1');
    const lists: string[][] = [];
    const reported = await Promise.all(
      [1, 2].map(() =>
        queue.reportMissed(late, (_, missed) => {
          lists.push(missed.map((r) => r.key));
          return 'missed';
        }),
      ),
    );
    expect(reported.sort()).toEqual([0, 1]);
    expect(lists).toEqual([['a']]);
    expect(await queue.claimMessages(claim('s1', late))).toMatchObject([{ body: 'missed' }]);
    expect(await stateOf('R1')).toBe('missed');
  });
});

describe('people', () => {
  test('the first who takes it has it', async () => {
    const { id } = await book.add(due('a'), NOW);
    expect(await book.take(id, 'WP-01')).toBe(true);
    expect(await book.take(id, 'WP-02')).toBe(false);
    expect(await book.byCode('R1')).toMatchObject({ takenBy: 'WP-01' });
  });

  test('rules keep their weekdays and wall time', async () => {
    const made = await book.addRule(
      {
        task: 'order milk',
        weekdays: [1, 3],
        time: '07:30' as never,
        audience: 'kitchen',
        madeBy: 'WP-01',
      },
      NOW,
    );
    expect(await book.rules()).toEqual([made]);
    await book.removeRule(made.id);
    expect(await book.rules()).toEqual([]);
  });

  test('finds what hangs on the wall clock of another zone', async () => {
    const wall = { date: '2026-12-05', time: '15:00', zone: 'America/Chicago' } as never;
    await book.add(due('a', NOW + HOUR, { wall, planned: false }), NOW);
    await book.add(due('b', NOW + HOUR, { planned: false }), NOW);
    expect((await book.offZone('America/New_York')).map((r) => r.key)).toEqual(['a']);
    expect(await book.offZone('America/Chicago')).toEqual([]);
  });
});
