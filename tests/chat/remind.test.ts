import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type Chat, createChat } from '../../src/chat/chat.ts';
import type { PersonRole } from '../../src/chat/request.ts';
import { noLedgers } from '../../src/kitchen/stock/no-ledgers.ts';
import type { Database } from '../../src/store/database.ts';
import { gameBooksIn } from '../../src/store/game-book.ts';
import { ledgersIn } from '../../src/store/ledger.ts';
import { reminderBooksIn } from '../../src/store/reminders/book.ts';
import { rostersIn } from '../../src/store/roster.ts';
import {
  at,
  book,
  game,
  MINUTE,
  type ReminderKitchen,
  reminderKitchen,
} from '../helpers/reminder-kitchen.ts';

let kitchen: ReminderKitchen;
let chat: Chat;
let database: Database;
/** A Wednesday. */
let now = at('2026-12-02 10:00');

beforeEach(async () => {
  now = at('2026-12-02 10:00');
  kitchen = await reminderKitchen('W');
  database = kitchen.database;
  chat = createChat(
    {
      book,
      clock: { nowMs: () => now },
      ledgers: ledgersIn(database, () => now),
      games: gameBooksIn(database),
      reminders: reminderBooksIn(database),
      rosters: rostersIn(database),
      remembers: () => true,
    },
    (error) => {
      throw error;
    },
  );
});
afterEach(async () => {
  await database.close();
});

const ask = (text: string, { who = 'IN-01', role = 'intern' as PersonRole } = {}) =>
  chat.ask({ text, asker: { role, who, workspace: 'W' }, conversation: 'c', isPrivate: true, nowMs: now });
const said = async (text: string): Promise<string> => {
  const { answer, error } = await ask(text);
  return answer?.title ?? `${error?.message} ${error?.hint}`;
};
const choices = async (text: string): Promise<readonly string[]> =>
  ((await ask(text)).answer?.next ?? []).map(({ says }) => says);

describe('setting one', () => {
  test.each([
    ['remind us thursday 3pm to soak dates', 'R1: soak dates, Thu Dec 3, 3:00 pm CST.'],
    ['in 20 min check the slab', 'R1: check the slab, Wed Dec 2, 10:20 am CST.'],
    ['every monday 7:30 order milk', 'R1: order milk, every Monday 7:30 am CST.'],
    ['remind us every tue and thu 14:00 to count', 'R1: count, every Tuesday and Thursday 2:00 pm CST.'],
    ['remind us 12/5 9am to pack coolers', 'R1: pack coolers, Sat Dec 5, 9:00 am CST.'],
    ['set a timer for 10 minutes', 'R1: time is up, Wed Dec 2, 10:10 am CST.'],
  ])('%s', async (text, title) => {
    expect(await said(text)).toBe(title);
  });

  test('it comes when it was said, to the role', async () => {
    await ask('remind the dietitian thursday 3pm to sign the log');
    now = at('2026-12-03 15:00');
    await kitchen.tick(now);
    const own = kitchen.channel.arrived.filter(({ reminder }) => reminder?.kind === 'own');
    expect(own).toMatchObject([{ audience: 'dietitian' }]);
    expect(own[0]?.body).toContain('Reminder: sign the log.');
  });

  test('a repeated one comes every week, at the wall time, over the clock change', async () => {
    now = at('2026-10-21 10:00');
    await ask('every monday 7:30 order milk');
    const heard: number[] = [];
    for (const wall of ['2026-10-26 07:30', '2026-11-02 07:29', '2026-11-02 07:30', '2026-11-09 07:30']) {
      await kitchen.tick(at(wall));
      if (kitchen.channel.titles().some((title) => title.includes('order milk'))) heard.push(at(wall));
    }
    expect(heard).toEqual([at('2026-10-26 07:30'), at('2026-11-02 07:30'), at('2026-11-09 07:30')]);
  });

  test('before the next game', async () => {
    await kitchen.parts.books.games.put([game()]);
    expect(await said('remind us the day before the game at 10am to wash bins')).toBe(
      'R1: wash bins, Fri Dec 4, 10:00 am CST.',
    );
  });

  test('athletes are told whom to ask', async () => {
    const { error } = await ask('remind us thursday 3pm to soak dates', { role: 'athlete' });
    expect(error?.code).toBe('not_allowed');
  });

  test('without a memory it says why not', async () => {
    const bare = createChat(
      {
        book,
        clock: { nowMs: () => now },
        ledgers: noLedgers,
        games: gameBooksIn(database),
        reminders: reminderBooksIn(database),
        rosters: rostersIn(database),
        remembers: () => true,
      },
      String,
    );
    const asker = { role: 'staff' as const, who: 's', workspace: 'W' };
    const reply = await bare.ask({
      text: 'reminders',
      asker,
      conversation: 'c',
      isPrivate: true,
      nowMs: now,
    });
    expect(reply.error).toMatchObject({ code: 'unavailable' });
  });
});

describe('what is not clear is asked', () => {
  test.each([
    ['remind us friday at 6 to pack', '6:00 am or 6:00 pm?'],
    ['remind us wednesday 3pm to soak dates', 'Today, Wed Dec 2, or next week?'],
    ['remind us today 8am to soak dates', 'Wed Dec 2, 8:00 am is past. When then?'],
    ['remind us at 9:00 to soak dates', 'Wed Dec 2, 9:00 am is past. When then?'],
    ['remind us yesterday 3pm to soak dates', 'Tue Dec 1, 3:00 pm is past. When then?'],
    ['remind us tomorrow to thaw bars', 'At what time, Thu Dec 3?'],
    ['remind us to soak dates', 'When?'],
    ['remind us friday 3pm', 'To do what?'],
  ])('%s', async (text, question) => {
    expect(await said(text)).toBe(question);
    expect(await kitchen.parts.books.reminders.upcoming(9)).toEqual([]);
  });

  test('every choice that is offered works as it stands', async () => {
    for (const text of [
      'remind us friday at 6 to pack',
      'remind us wednesday 3pm to soak dates',
      'remind us today 8am to soak dates',
      'remind us tomorrow to thaw bars',
    ]) {
      for (const choice of await choices(text)) expect(await said(choice), choice).toMatch(/^R\d+: /);
    }
  });

  test.each([
    ['remind us friday at 6 to pack', '6 pm', 'R1: pack, Fri Dec 4, 6:00 pm CST.'],
    ['remind us tomorrow to thaw bars', '9am', 'R1: thaw bars, Thu Dec 3, 9:00 am CST.'],
    ['remind us to soak dates', 'friday 3pm', 'R1: soak dates, Fri Dec 4, 3:00 pm CST.'],
    ['remind us to soak dates', 'in 2 hours', 'R1: soak dates, Wed Dec 2, 12:00 pm CST.'],
  ])('%s, then %s', async (text, reply, title) => {
    await ask(text);
    expect(await said(reply)).toBe(title);
  });
});

describe('what was set', () => {
  beforeEach(async () => {
    await ask('remind us thursday 3pm to soak dates');
    await ask('every monday 7:30 order milk');
  });
  const told = async (wall: string) => {
    now = at(wall);
    await kitchen.tick(now);
  };

  test('is listed with code, date, time and zone', async () => {
    const { answer } = await ask('reminders');
    expect(JSON.stringify(answer?.sections)).toContain('R1 · Thu Dec 3, 3:00 pm CST · soak dates');
  });

  test('is cancelled by code or by its words; a repeated one for good', async () => {
    expect(await said('cancel R1')).toBe('Cancelled: soak dates, Thu Dec 3, 3:00 pm CST (R1).');
    expect(await said('cancel the milk reminder')).toBe('Cancelled for good: order milk, every Monday (R2).');
    await told('2026-12-07 07:30');
    expect(kitchen.channel.titles().filter((title) => title.includes('milk'))).toEqual([]);
    expect(await said('cancel R1')).toBe('R1 is cancelled already. Say "done R1", or type "reminders".');
    expect(await said('cancel R99')).toBe(
      'There is no reminder R99. Type "reminders" to see them with their codes.',
    );
  });

  test('is moved', async () => {
    expect(await said('move R1 to friday 9am')).toBe('R1: soak dates, now Fri Dec 4, 9:00 am CST.');
    await told('2026-12-03 15:00');
    expect(kitchen.channel.titles()).not.toContain('Reminder: soak dates.');
    await told('2026-12-04 09:00');
    expect(kitchen.channel.titles()).toContain('Reminder: soak dates.');
  });

  test('is taken by one, snoozed, and done', async () => {
    await told('2026-12-03 15:00');
    expect(await said('got it R1')).toBe('IN-01 has R1: soak dates.');
    expect((await ask('got it R1', { who: 'IN-02' })).error?.message).toBe('IN-01 has R1 already.');
    expect(await said('snooze R1 30 min')).toMatch(/^R\d+: soak dates, now Thu Dec 3, 3:30 pm CST\.$/);
    kitchen.channel.read();
    await told('2026-12-03 15:30');
    expect(kitchen.channel.titles()).toContain('Reminder: soak dates.');
  });

  test('what was put off is not put off again, and "done" says where it went', async () => {
    await told('2026-12-03 15:00');
    const first = await ask('snooze R1 30 min');
    const [code] = String(first.answer?.title).split(':');
    expect(first.answer?.mark).toMatchObject({ who: 'IN-01', next: [] });
    for (const again of ['snooze R1 30 min', 'done R1', 'got it R1']) {
      const { answer } = await ask(again, { who: 'IN-02' });
      expect(answer?.title).toContain(`R1 was put off: soak dates is ${code}, Thu Dec 3, 3:30 pm CST`);
      expect(answer?.mark?.who).toBe('IN-01');
    }
    kitchen.channel.read();
    await told('2026-12-03 15:30');
    expect(kitchen.channel.titles().filter((title) => title.includes('soak dates'))).toHaveLength(1);
  });

  test('done twice says who did it, and when', async () => {
    await told('2026-12-03 15:00');
    await ask('done R1');
    now += MINUTE;
    const { answer } = await ask('done R1', { who: 'IN-02' });
    expect(answer?.title).toBe('R1 was done before: soak dates, by IN-01, Thu Dec 3, 3:00 pm CST.');
    expect(answer?.mark).toMatchObject({ who: 'IN-01', did: 'did it, Thu Dec 3, 3:00 pm CST', next: [] });
  });

  test('"done" alone means the only one that is open; of several it asks which', async () => {
    await told('2026-12-03 15:00');
    const { answer } = await ask('done');
    expect(answer?.title).toMatch(/^(Done: soak dates \(R1\)\.|Which one: .*R1.*\?)$/);
    expect(await said('done R1')).toMatch(
      /^(Done: soak dates \(R1\)\.|R1 was done before: soak dates, by IN-01)/,
    );
    now += MINUTE;
    const list = await ask('reminders');
    expect(JSON.stringify(list.answer?.data.open)).not.toContain('"R1"');
  });
});

test('a prep that somebody has is not called unclaimed: by its button’s words', async () => {
  await kitchen.parts.books.games.put([game()]);
  await kitchen.tick(now);
  now = at('2026-12-04 10:00');
  await kitchen.tick(now);
  const prep = kitchen.channel.read().find(({ data }) => data.kind === 'prep');
  const gotIt = prep?.next.find(({ says }) => says.startsWith('got it'))?.says ?? '';
  expect(await said(gotIt)).toMatch(/^IN-01 has R\d+: Prep for vs Riverton\.$/);
});
