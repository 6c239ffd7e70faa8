import { afterAll, beforeAll, expect, test } from 'vitest';
import type { NewReminder } from '../../src/kitchen/reminders/reminder-book.ts';
import { openDatabase } from '../../src/store/database.ts';
import { reminderBooksIn } from '../../src/store/reminders/book.ts';
import { freshPlace, type Place } from '../helpers/database.ts';
import { openChannel } from './channel.ts';
import { BOOK_FILE, prepareChildren, startChild } from './children.ts';

const INSTANCES = 3;
const DUE = 5_000;
const NOW = Date.parse('2026-12-04T12:00:00Z');
const W = 'W';
const onPostgres = (process.env.DATABASE_URL ?? '').startsWith('postgres');

let place: Place;
beforeAll(async () => {
  await prepareChildren();
  place = await freshPlace();
});
afterAll(async () => {
  await place.remove();
});

test.runIf(onPostgres)(
  `${INSTANCES} instances on one PostgreSQL, ${DUE} reminders due: each is sent exactly once`,
  async () => {
    const database = await openDatabase(place.url);
    const channel = await openChannel();
    const due: NewReminder[] = Array.from({ length: DUE }, (_, n) => ({
      key: `due-${n}`,
      kind: 'own',
      audience: 'kitchen',
      dueMs: NOW - (n % 60) * 1000,
      helpsUntilMs: NOW + 3_600_000,
      about: { task: `${n}` },
      planned: false,
    }));
    await reminderBooksIn(database)(W).plan(due, NOW);
    const began = performance.now();
    const children = Array.from({ length: INSTANCES }, (_, n) =>
      startChild({
        url: place.url,
        workspace: W,
        bookFile: BOOK_FILE,
        channelPort: channel.port,
        nowMs: NOW,
        name: `instance${n}`,
        work: 'until_idle',
      }),
    );
    await Promise.all(children.map(({ ended }) => ended));
    const byInstance = children.map(({ lines }) =>
      lines
        .filter((line) => line.startsWith('ticked '))
        .reduce((sum, line) => sum + Number(line.slice('ticked '.length)), 0),
    );
    const sends = [...channel.byKey.values()].reduce((sum, ids) => sum + ids.length, 0);
    process.stdout.write(
      `PostgreSQL: ${INSTANCES} instances sent ${byInstance.join(' + ')} of ${DUE} reminders in ${Math.round((performance.now() - began) / 1000)} s\n`,
    );
    expect(children.flatMap(({ lines }) => lines.filter((line) => line.startsWith('error ')))).toEqual([]);
    expect(sends).toBe(DUE);
    expect(channel.byKey.size).toBe(DUE);
    expect(byInstance.every((sent) => sent > 0)).toBe(true);
    await channel.close();
    await database.close();
  },
);
