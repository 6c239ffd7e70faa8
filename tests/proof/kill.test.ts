import { existsSync } from 'node:fs';
import { setTimeout } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { NewReminder } from '../../src/kitchen/reminders/reminder-book.ts';
import { openDatabase } from '../../src/store/database.ts';
import { ledgersIn } from '../../src/store/ledger.ts';
import { reminderBooksIn } from '../../src/store/reminders/book.ts';
import { freshPlace, type Place } from '../helpers/database.ts';
import { type OutsideChannel, openChannel } from './channel.ts';
import { BOOK_FILE, type Child, prepareChildren, startChild } from './children.ts';

const KILLS = Number(process.env.KILLS ?? 300);
/** Databases under the knife at once: the machine works while a child starts. */
const LANES = 3;
const START = Date.parse('2026-12-04T12:00:00Z');
/** Longer than every lease: what a killed one held is free for the next. */
const ROUND_MS = 6 * 60_000;
const DUE_EACH_ROUND = 3;
/** Killed so often, they fall due faster than they go out: one round in so many is left in peace. */
const QUIET_EVERY = 10;
/** A kill falls this long at most after the moment it was aimed at. */
const JITTER_MS = 20;
const LONGEST_WAIT_MS = 2_000;
const W = 'W';

const places: Place[] = [];
beforeAll(async () => {
  // A killed process loses nothing that it wrote, on disk or in memory; only a power cut would tell them apart.
  if (existsSync('/dev/shm')) process.env.TMPDIR = '/dev/shm';
  await prepareChildren();
});
afterAll(async () => {
  for (const place of places) await place.remove();
});

const dueIn = (round: number): NewReminder[] =>
  Array.from({ length: DUE_EACH_ROUND }, (_, n) => ({
    key: `due-${round}-${n}`,
    kind: 'own',
    audience: 'kitchen',
    dueMs: START + round * ROUND_MS,
    helpsUntilMs: START + 30 * 24 * 3_600_000,
    about: { task: 'x' },
    planned: false,
  }));

interface Counts {
  kills: number;
  whileStarting: number;
  acknowledged: number;
  lost: string[];
  due: number;
  untold: string[];
  twice: string[];
  allowedTwice: number;
  looks: number;
  found: number;
  /** Missed, or still on their way when all is quiet. */
  unfinished: string[];
  errors: string[];
}

/**
 * Waits for a random moment: while it starts, after a batch was acknowledged, around a call to the channel, or between a
 * call and its answer. Counted in what the child does, so that a slow machine kills at work too. 1 when it was a start.
 */
async function momentToKill(child: Child, channel: OutsideChannel): Promise<number> {
  const draw = Math.random();
  if (draw < 0.1) {
    await setTimeout(Math.random() * 200);
    return 1;
  }
  const some = 1 + Math.floor(Math.random() * 4);
  if (draw < 0.5) await child.wrote(1 + some);
  else {
    const called = channel.calls(some, draw > 0.75);
    await child.ready;
    await Promise.race([called, child.ended, setTimeout(LONGEST_WAIT_MS)]);
    // Calls that did not come must not be held for a later child.
    channel.forget();
  }
  await setTimeout(Math.random() * JITTER_MS);
  return 0;
}

async function lane(at: number, kills: number): Promise<Counts> {
  const place = await freshPlace();
  places.push(place);
  const database = await openDatabase(place.url);
  const ledger = ledgersIn(database, () => 0)(W);
  const book = reminderBooksIn(database)(W);
  const channel = await openChannel();
  const acknowledged = new Set<string>();
  const counts: Counts = {
    kills: 0,
    whileStarting: 0,
    acknowledged: 0,
    lost: [],
    due: kills * DUE_EACH_ROUND,
    untold: [],
    twice: [],
    allowedTwice: 0,
    looks: 0,
    found: 0,
    unfinished: [],
    errors: [],
  };
  const orders = (round: number, work: 'forever' | 'until_idle') => ({
    url: place.url,
    workspace: W,
    bookFile: BOOK_FILE,
    channelPort: channel.port,
    nowMs: START + round * ROUND_MS,
    name: `lane${at}-${round}`,
    work,
  });
  const heard = async (child: Child): Promise<void> => {
    const made = child.lines.filter((line) => line.startsWith('made ')).map((line) => line.slice(5));
    for (const key of made) {
      acknowledged.add(key);
      if (!(await ledger.eventByRequest(key))) counts.lost.push(key);
    }
    counts.errors.push(...child.lines.filter((line) => line.startsWith('error ')));
  };

  const quietRound = async (round: number): Promise<void> => {
    const child = startChild(orders(round, 'until_idle'));
    await child.ended;
    await heard(child);
  };

  for (let round = 0; round < kills; round += 1) {
    for (const reminder of dueIn(round)) await book.add(reminder, START + round * ROUND_MS);
    const child = startChild(orders(round, 'forever'));
    counts.whileStarting += await momentToKill(child, channel);
    child.process.kill('SIGKILL');
    await child.ended;
    counts.kills += child.process.signalCode === 'SIGKILL' ? 1 : 0;
    await heard(child);
    expect(counts.lost, `after kill ${round}`).toEqual([]);
    expect(channel.forbidden, `after kill ${round}`).toEqual([]);
    // Late in the same round, when the leases of the one just killed have run out.
    if (round % QUIET_EVERY === QUIET_EVERY - 1) await quietRound(round + 0.95);
  }
  // Twice: what the last one killed held is free only after its lease.
  await quietRound(kills);
  await quietRound(kills + 1);

  for (const key of acknowledged) if (!(await ledger.eventByRequest(key))) counts.lost.push(key);
  for (let round = 0; round < kills; round += 1) {
    for (const { key } of dueIn(round)) {
      const reminder = await book.byKey(key);
      const messages = channel.byKey.get(key) ?? [];
      if (reminder?.state !== 'sent' || messages.length === 0)
        counts.untold.push(`${key} ${reminder?.state}`);
      if (messages.length > 1) counts.twice.push(key);
    }
  }
  counts.acknowledged = acknowledged.size;
  counts.allowedTwice = channel.allowed.length;
  counts.looks = channel.looks;
  counts.found = channel.found;
  counts.unfinished = (
    await database.db
      .selectFrom('reminders')
      .leftJoin('outbox', 'outbox.reminder_id', 'reminders.id')
      .select(['reminders.key', 'reminders.state', 'outbox.state as message', 'reminders.attempts'])
      .select(['reminders.due_ms', 'reminders.claimed_until_ms', 'outbox.sending_until_ms'])
      .where('reminders.state', 'in', ['missed', 'claimed', 'queued'])
      .execute()
  ).map((row) => JSON.stringify(row));
  expect(channel.forbidden).toEqual([]);
  await channel.close();
  await database.close();
  return counts;
}

test(`killed ${KILLS} times at random moments: what was acknowledged is there, every reminder is told, none twice`, async () => {
  const each = Math.ceil(KILLS / LANES);
  const began = performance.now();
  const lanes = await Promise.all(Array.from({ length: LANES }, (_, at) => lane(at, each)));
  const sum = (pick: (counts: Counts) => number) => lanes.reduce((total, counts) => total + pick(counts), 0);
  const twice = sum(({ twice: keys }) => keys.length);
  const allowed = sum((counts) => counts.allowedTwice);
  process.stdout.write(
    `${process.env.DATABASE_URL ? 'PostgreSQL' : 'SQLite'}: ${sum((c) => c.kills)} kills (${sum((c) => c.whileStarting)} aimed at a start) in ${Math.round((performance.now() - began) / 1000)} s; ` +
      `${sum((c) => c.acknowledged)} batches acknowledged, ${sum((c) => c.lost.length)} lost; ` +
      `${sum((c) => c.due)} reminders due, ${sum((c) => c.untold.length)} not told, ${twice} told twice (${allowed} allowed); ` +
      `history looked at ${sum((c) => c.looks)} times, found there ${sum((c) => c.found)}\n`,
  );
  expect(sum((c) => c.kills)).toBeGreaterThanOrEqual(KILLS);
  expect(lanes.flatMap((c) => c.lost)).toEqual([]);
  expect(lanes.flatMap((c) => c.untold)).toEqual([]);
  expect(twice).toBe(allowed);
  expect(lanes.flatMap((c) => c.errors)).toEqual([]);
  expect(lanes.flatMap((c) => c.unfinished)).toEqual([]);
  expect(
    sum((c) => c.found),
    'crashes between send and record',
  ).toBeGreaterThan(0);
  expect(sum((c) => c.acknowledged)).toBeGreaterThan(KILLS / 2);
});
