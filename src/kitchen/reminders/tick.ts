import { randomUUID } from 'node:crypto';
import type { Book } from '../../nutrition/book.ts';
import type { Composer } from './composer.ts';
import { type Delivered, deliverDue } from './deliver.ts';
import type { Messenger } from './messenger.ts';
import {
  type KitchenState,
  kitchenState,
  moveToZone,
  type PlanningBooks,
  plannedReminders,
} from './planner.ts';
import type { OutboxMessage, Reminder, ReminderPlaces } from './reminder.ts';
import type { ReminderQueue } from './reminder-queue.ts';

/** Composing takes moments; a holder that is gone for this long has died. */
const LEASE_MS = 2 * 60_000;
const BATCH = 100;
/** Later than this after its time, a reminder says that it is late. */
const LATE_AFTER_MS = 10 * 60_000;

/** What one workspace's reminders need. */
export interface TickParts {
  readonly book: Book;
  /** The book with the settings as they are now, where they may change while this runs. */
  readonly bookNow?: () => Promise<Book>;
  /** Where staff chose that it is told, where they can. */
  readonly places?: () => Promise<ReminderPlaces>;
  readonly books: PlanningBooks;
  readonly queue: ReminderQueue;
  readonly composer: Composer;
  readonly messenger: Messenger;
  /** Records what went wrong; the next tick tries again. */
  readonly report: (error: unknown) => void;
  readonly isStopping?: () => boolean;
}

export interface TickReport extends Delivered {
  /** Written down, moved or called off by planning. */
  readonly replanned: number;
  readonly queued: number;
  readonly missed: number;
}

/** One look at the clock: plan, list what was missed, compose what is due, send what waits. */
export type Tick = (nowMs: number) => Promise<TickReport>;

/**
 * A tick of one workspace. It takes the time as given and never waits, and may run in several instances at once.
 * What fails is reported and left to the next tick; one failing step does not keep the others from running.
 */
export function createTick(parts: TickParts): Tick {
  const instance = randomUUID();
  let ticks = 0;
  let zone: string | undefined;
  return async (nowMs) => {
    ticks += 1;
    const by = `${instance}:${ticks}`;
    let replanned = 0;
    await tried(parts, async () => void (await parts.queue.sweep(nowMs)));
    const book = (await tried(parts, async () => parts.bookNow?.())) ?? parts.book;
    const { timeZone } = book.settings;
    const state = await tried(parts, () => kitchenState(parts.books, book, nowMs));
    if (!state) return { replanned: 0, queued: 0, missed: 0, sent: 0, found: 0, failed: 0 };
    await tried(parts, async () => {
      if (zone !== timeZone) await moveToZone(parts.books.reminders, timeZone);
      zone = timeZone;
      const { added, moved, cancelled } = await parts.books.reminders.plan(plannedReminders(state), nowMs);
      replanned = added + moved + cancelled;
    });
    const missed = await tried(parts, () =>
      parts.queue.reportMissed(nowMs, (audience, gone) =>
        parts.composer.composeMissed(audience, gone, state),
      ),
    );
    const queued = await tried(parts, () => queueDue(parts, state, by));
    const places = (await tried(parts, async () => parts.places?.())) ?? {};
    const delivered = await tried(parts, () =>
      deliverDue({
        places,
        queue: parts.queue,
        messenger: parts.messenger,
        freshBody: (message) => freshBody(parts, state, message),
        by,
        nowMs,
        isStopping: parts.isStopping ?? (() => false),
        report: parts.report,
      }),
    );
    return {
      replanned,
      queued: queued ?? 0,
      missed: missed ?? 0,
      ...(delivered ?? { sent: 0, found: 0, failed: 0 }),
    };
  };
}

async function tried<T>({ report }: TickParts, step: () => Promise<T>): Promise<T | undefined> {
  try {
    return await step();
  } catch (error) {
    report(error);
    return undefined;
  }
}

async function queueDue(parts: TickParts, state: KitchenState, by: string): Promise<number> {
  const { nowMs } = state;
  let queued = 0;
  for (;;) {
    if (parts.isStopping?.()) return queued;
    const due = await parts.queue.claimDue({ by, nowMs, leaseMs: LEASE_MS, most: BATCH });
    if (due.length === 0) return queued;
    for (const reminder of due) {
      await tried(parts, async () => {
        if (await queueOne(parts, state, reminder, by)) queued += 1;
      });
    }
  }
}

async function queueOne(
  { queue, ...parts }: TickParts,
  state: KitchenState,
  reminder: Reminder,
  by: string,
): Promise<boolean> {
  const body = await composed(parts, state, reminder);
  if (body !== undefined) return queue.enqueue(reminder, by, body, state.nowMs);
  await queue.drop(reminder, by);
  return false;
}

const isLate = (reminder: Reminder, nowMs: number): boolean => nowMs - reminder.dueMs > LATE_AFTER_MS;

function composed(
  { composer, books }: Pick<TickParts, 'composer' | 'books'>,
  state: KitchenState,
  reminder: Reminder,
): Promise<string | undefined> {
  return composer.compose(reminder, { state, ledger: books.ledger, late: isLate(reminder, state.nowMs) });
}

/** What waited, or is tried again, is written anew: stock and plans may have changed, and it may be late by now. */
async function freshBody(
  parts: TickParts,
  state: KitchenState,
  message: OutboxMessage,
): Promise<string | undefined> {
  const { reminder } = message;
  if (!reminder || (message.attempts <= 1 && !isLate(reminder, state.nowMs))) return message.body;
  return composed(parts, state, reminder);
}
