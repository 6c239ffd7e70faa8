import { readFileSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { setImmediate, setTimeout } from 'node:timers/promises';
import { deserialize } from 'node:v8';
import type { Composer } from '../../src/kitchen/reminders/composer.ts';
import { DeliveryFailure, type Messenger } from '../../src/kitchen/reminders/messenger.ts';
import { createTick } from '../../src/kitchen/reminders/tick.ts';
import { recordMade } from '../../src/kitchen/stock/record-made.ts';
import type { Book } from '../../src/nutrition/book.ts';
import { openDatabase } from '../../src/store/database.ts';
import { gameBooksIn } from '../../src/store/game-book.ts';
import { ledgersIn } from '../../src/store/ledger.ts';
import { reminderBooksIn } from '../../src/store/reminders/book.ts';
import { reminderQueuesIn } from '../../src/store/reminders/queue.ts';
import type { ChildOrders } from './orders.ts';

/** One instance of the service: it works until it is killed, or until nothing is due. A line on stdout is an acknowledgement. */
const orders = JSON.parse(process.argv[2] ?? '') as ChildOrders;
const { workspace, nowMs, channelPort, name } = orders;
const book = deserialize(readFileSync(orders.bookFile)) as Book;
const say = (line: string): void => void process.stdout.write(`${line}\n`);

const agent = new Agent({ keepAlive: true });
function ask(path: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const call = request({ port: channelPort, host: '127.0.0.1', path, agent }, (answer) => {
      let body = '';
      answer.setEncoding('utf8').on('data', (part: string) => {
        body += part;
      });
      answer.on('end', () => resolve(body)).on('error', reject);
    });
    call.on('error', reject).end();
  }).catch((error: Error) => {
    throw new DeliveryFailure({ reason: error.message, outcome: 'unanswered' });
  }) as Promise<string>;
}

const messenger: Messenger = {
  send: ({ id, reminder }) => ask(`/send?id=${id}&by=${name}&key=${encodeURIComponent(reminder?.key ?? '')}`),
  find: async ({ id }) => (await ask(`/find?id=${id}&by=${name}`)) || undefined,
};
const composer: Composer = {
  compose: async ({ key }) => JSON.stringify({ title: key }),
  composeMissed: (_audience, missed) => JSON.stringify(missed.map(({ key }) => key)),
};

const database = await openDatabase(orders.url);
const ledger = ledgersIn(database, () => nowMs)(workspace);
const tick = createTick({
  book,
  books: { ledger, games: gameBooksIn(database)(workspace), reminders: reminderBooksIn(database)(workspace) },
  queue: reminderQueuesIn(database)(workspace),
  composer,
  messenger,
  report: (error) => say(`error ${String(error)}`),
});
const recipe = [...book.recipes.values()][0];
if (!recipe) throw new Error('no recipe to make');

async function makeForever(): Promise<void> {
  for (let n = 0; ; n += 1) {
    const requestKey = `${name}-${n}`;
    await recordMade(
      { ledger, book, nowMs },
      { who: name, atMs: nowMs, requestKey, batches: [{ recipe: recipe as never, pieces: 12, lots: [] }] },
    );
    say(`made ${requestKey}`);
    // People pause; without it SQLite's one connection would hardly get to the reminders before the kill.
    await setTimeout(5);
  }
}

async function tickForever(): Promise<void> {
  for (;;) {
    await tick(nowMs);
    // A tick with nothing to send on SQLite never leaves the microtasks: batches, sockets and timers get their turn here.
    await setImmediate();
  }
}

async function tickUntilIdle(): Promise<void> {
  for (;;) {
    const { sent, found, queued } = await tick(nowMs);
    say(`ticked ${sent + found}`);
    if (sent + found + queued === 0) return;
  }
}

say('ready');
if (orders.work === 'forever') await Promise.all([makeForever(), tickForever()]);
await tickUntilIdle();
await database.close();
agent.destroy();
