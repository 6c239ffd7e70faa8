import type { Answer } from '../../src/chat/answer.ts';
import { answerIn, reminderComposer } from '../../src/chat/reminders/compose.ts';
import type { Game } from '../../src/kitchen/games/game.ts';
import type { Messenger } from '../../src/kitchen/reminders/messenger.ts';
import type { OutboxMessage } from '../../src/kitchen/reminders/reminder.ts';
import { createTick, type Tick, type TickParts } from '../../src/kitchen/reminders/tick.ts';
import { calendarDate, clockTime, instantOf } from '../../src/kitchen/time/zone.ts';
import type { Book } from '../../src/nutrition/book.ts';
import { openKitchen } from '../../src/open-kitchen.ts';
import type { Database } from '../../src/store/database.ts';
import { gameBooksIn } from '../../src/store/game-book.ts';
import { ledgersIn } from '../../src/store/ledger.ts';
import { reminderBooksIn } from '../../src/store/reminders/book.ts';
import { reminderQueuesIn } from '../../src/store/reminders/queue.ts';
import { freshDatabase } from './database.ts';

const demo = (await openKitchen({ nowMs: () => 0 })).book;
/** The demo kitchen with the hours the tests are written for. */
export const book: Book = {
  ...demo,
  settings: {
    ...demo.settings,
    timeZone: 'America/Chicago',
    stockCheckTime: '08:00',
    readingTimes: ['07:00', '16:00'],
    prepTime: '10:00',
  },
};
export const MINUTE = 60_000;
export const HOUR = 60 * MINUTE;

/** The instant of "2026-12-04 09:30" in a zone, the demo kitchen's unless said. */
export function at(wall: string, zone = book.settings.timeZone): number {
  const [date = '', time = '00:00'] = wall.split(' ');
  return instantOf({ date: calendarDate(date), time: clockTime(time) }, zone);
}

/** A channel that keeps what arrives; `answers` decides what becomes of the next send. */
export class Channel implements Messenger {
  readonly arrived: OutboxMessage[] = [];
  looked = 0;
  onSend: (message: OutboxMessage) => void = () => {};

  async send(message: OutboxMessage): Promise<string> {
    this.onSend(message);
    this.arrived.push(message);
    return `sent ${message.id}`;
  }
  async find({ id }: OutboxMessage): Promise<string | undefined> {
    this.looked += 1;
    return this.arrived.some((message) => message.id === id) ? `found ${id}` : undefined;
  }
  /** What people read since the last call. */
  read(): Answer[] {
    return this.arrived.splice(0).map(({ body }) => answerIn(body));
  }
  titles(): string[] {
    return this.read().map(({ title }) => title);
  }
}

export interface ReminderKitchen {
  readonly database: Database;
  readonly channel: Channel;
  readonly parts: TickParts;
  readonly tick: Tick;
  readonly errors: unknown[];
}

/** A fresh database with a channel and a tick; `errors` collects what the tick reports. */
export async function reminderKitchen(workspace = 'W'): Promise<ReminderKitchen> {
  const database = await freshDatabase();
  const channel = new Channel();
  const errors: unknown[] = [];
  const parts: TickParts = {
    book,
    books: {
      ledger: ledgersIn(database, () => 0)(workspace),
      games: gameBooksIn(database)(workspace),
      reminders: reminderBooksIn(database)(workspace),
    },
    queue: reminderQueuesIn(database)(workspace),
    composer: reminderComposer,
    messenger: channel,
    report: (error) => void errors.push(error),
  };
  return { database, channel, parts, tick: createTick(parts), errors };
}

export const game = (more: Partial<Game> = {}): Game => ({
  id: 'g1',
  uid: 'g1',
  sequence: 0,
  title: 'Soccer',
  sport: 'soccer',
  opponent: 'Riverton',
  side: 'home',
  date: calendarDate('2026-12-05'),
  time: clockTime('14:00'),
  timeZone: book.settings.timeZone,
  people: 20,
  recipeId: 'oat-bars',
  status: 'planned',
  updatedMs: 0,
  ...more,
});
