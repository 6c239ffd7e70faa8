import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { DeliveryFailure } from '../../../src/kitchen/reminders/messenger.ts';
import { createTick } from '../../../src/kitchen/reminders/tick.ts';
import { recordReadings } from '../../../src/kitchen/stock/temperature.ts';
import {
  at,
  game,
  HOUR,
  MINUTE,
  type ReminderKitchen,
  reminderKitchen,
} from '../../helpers/reminder-kitchen.ts';

let kitchen: ReminderKitchen;
beforeEach(async () => {
  kitchen = await reminderKitchen();
});
afterEach(async () => {
  await kitchen.database.close();
});

const NIGHT = at('2026-12-03 23:00');
const own = (task: string, dueMs: number, helpsForMs = 12 * HOUR) => ({
  key: `own:${task}`,
  kind: 'own' as const,
  audience: 'kitchen' as const,
  dueMs,
  helpsUntilMs: dueMs + helpsForMs,
  about: { task },
  planned: false,
});

describe('the day of a kitchen', () => {
  test('the stock check and the readings come at the kitchen’s times, once', async () => {
    const { tick, channel } = kitchen;
    await tick(NIGHT);
    expect(channel.titles()).toEqual([]);
    const heard: string[] = [];
    for (let now = at('2026-12-04 06:00'); now <= at('2026-12-04 20:00'); now += 5 * MINUTE) {
      await tick(now);
      heard.push(...channel.titles());
    }
    expect(heard.filter((title) => title.startsWith('Stock check'))).toHaveLength(1);
    expect(heard.filter((title) => title.startsWith('Read the thermometers'))).toHaveLength(
      kitchen.parts.book.settings.readingTimes.length,
    );
    expect(kitchen.errors).toEqual([]);
  });

  test('a reading already taken is not asked for', async () => {
    const { tick, channel, parts } = kitchen;
    const [first = ''] = [...parts.book.settings.readingTimes].sort();
    await tick(NIGHT);
    const dueMs = at(`2026-12-04 ${first}`);
    for (const place of parts.book.settings.locations.filter(({ kind }) => kind !== 'room')) {
      const desk = { ledger: parts.books.ledger, book: parts.book, nowMs: dueMs - MINUTE };
      const tempF = place.kind === 'freezer' ? 0 : 38;
      await recordReadings(desk, { who: 'IN-01', atMs: dueMs - MINUTE, readings: [{ place, tempF }] });
    }
    await tick(dueMs);
    expect(channel.titles().filter((title) => title.startsWith('Read'))).toEqual([]);
  });

  test('a restart says nothing twice', async () => {
    await kitchen.tick(NIGHT);
    await kitchen.tick(at('2026-12-04 08:00'));
    expect(kitchen.channel.titles().length).toBeGreaterThan(0);
    await createTick(kitchen.parts)(at('2026-12-04 08:01'));
    expect(kitchen.channel.titles()).toEqual([]);
  });

  test('the clock going back does not tell it again', async () => {
    await kitchen.tick(NIGHT);
    await kitchen.tick(at('2026-12-04 08:00'));
    kitchen.channel.read();
    for (const wall of ['2026-12-04 07:00', '2026-12-04 08:00', '2026-12-04 08:01']) {
      await kitchen.tick(at(wall));
    }
    expect(kitchen.channel.titles().filter((title) => title.startsWith('Stock check'))).toEqual([]);
  });
});

describe('a game', () => {
  const PREP = at('2026-12-04 10:00');
  async function told(): Promise<void> {
    await kitchen.parts.books.games.put([game()]);
    await kitchen.tick(NIGHT);
    await kitchen.tick(PREP);
  }

  test('its prep comes with scaled amounts, and why', async () => {
    await told();
    const prep = kitchen.channel.read().find(({ data }) => data.kind === 'prep');
    expect(prep?.title).toMatch(/^Prep now: \d+ .+ for vs Riverton, Sat Dec 5, 2:00 pm CST\.$/);
    expect(JSON.stringify(prep?.sections)).toContain('Grams');
    expect(JSON.stringify(prep?.sections)).toContain('20 people');
    expect(prep?.next.map(({ says }) => says)).toContain(`got it ${prep?.data.reminder}`);
  });

  test('that moves takes its prep along; that is cancelled takes it away', async () => {
    const { games, reminders } = kitchen.parts.books;
    await games.put([game()]);
    await kitchen.tick(NIGHT);
    const prepsDue = async () =>
      (await reminders.upcoming(99)).filter(({ kind }) => kind === 'prep').map(({ dueMs }) => dueMs);
    expect(await prepsDue()).toEqual([PREP]);
    await games.put([game({ date: '2026-12-07' as never })]);
    await kitchen.tick(NIGHT + MINUTE);
    const [moved = 0] = await prepsDue();
    expect(moved).toBeGreaterThan(PREP);
    await games.put([game({ status: 'cancelled' })]);
    await kitchen.tick(NIGHT + 2 * MINUTE);
    expect(await prepsDue()).toEqual([]);
  });

  test('nobody takes the prep: it is said once more, then the dietitian hears of it, and no more', async () => {
    await told();
    kitchen.channel.read();
    const heard: string[] = [];
    for (let now = PREP + 5 * MINUTE; now <= PREP + 6 * HOUR; now += 5 * MINUTE) {
      await kitchen.tick(now);
      heard.push(
        ...kitchen.channel.arrived
          .splice(0)
          .filter(({ reminder }) => reminder?.kind === 'prep' || reminder?.kind === 'escalation')
          .map(({ audience, body }) => `${audience}: ${(JSON.parse(body) as { title: string }).title}`),
      );
    }
    expect(heard).toEqual([
      expect.stringMatching(/^kitchen: Nobody has this prep yet/),
      expect.stringMatching(/^dietitian: Nobody has taken the prep for vs Riverton/),
    ]);
  });

  test('somebody takes it: nothing more is said', async () => {
    await told();
    const prep = kitchen.channel.arrived.find(({ reminder }) => reminder?.kind === 'prep')?.reminder;
    await kitchen.parts.books.reminders.take(prep?.id ?? '', 'IN-02');
    kitchen.channel.read();
    for (let now = PREP; now <= PREP + 3 * HOUR; now += 10 * MINUTE) await kitchen.tick(now);
    expect(kitchen.channel.titles().filter((title) => /prep/i.test(title))).toEqual([]);
  });

  test('the packing comes an hour before it leaves', async () => {
    await kitchen.parts.books.games.put([game({ side: 'away', departsMs: at('2026-12-05 09:00') })]);
    await kitchen.tick(NIGHT);
    await kitchen.tick(at('2026-12-05 08:00'));
    expect(kitchen.channel.titles()).toContainEqual(expect.stringMatching(/^Pack now: \d+ .* at Riverton/));
  });
});

describe('an outage', () => {
  test('what still helps comes marked late, what does not is listed in one message', async () => {
    const { reminders } = kitchen.parts.books;
    await kitchen.tick(NIGHT);
    await reminders.add(own('soak dates', at('2026-12-04 15:00')), NIGHT);
    await reminders.add(own('check the slab', at('2026-12-04 15:00'), HOUR), NIGHT);
    const back = at('2026-12-05 01:00');
    const { missed } = await kitchen.tick(back);
    const read = kitchen.channel.read();
    const late = read.filter(({ title }) => title.startsWith('Late: '));
    expect(late.map(({ title }) => title)).toContain('Late: Reminder: soak dates.');
    expect(JSON.stringify(late)).toContain('It was due Fri Dec 4, 3:00 pm CST.');
    const lists = read.filter(({ data }) => data.kind === 'missed');
    expect(lists).toHaveLength(1);
    const words = JSON.stringify(lists[0]?.sections);
    expect(words).toContain('check the slab: Fri Dec 4, 3:00 pm CST');
    expect(words).toContain('Stock check: Fri Dec 4, 8:00 am CST');
    expect(lists[0]?.data.missed).toHaveLength(missed);
    await kitchen.tick(back + MINUTE);
    expect(kitchen.channel.titles()).toEqual([]);
  });

  test('a week away: every check of the week is accounted for', async () => {
    await kitchen.tick(NIGHT);
    await kitchen.tick(at('2026-12-11 23:30'));
    const [list] = kitchen.channel.read().filter(({ data }) => data.kind === 'missed');
    expect(JSON.stringify(list?.data.missed).match(/"stock_check"/g)).toHaveLength(7);
  });
});

describe('a surface that fails', () => {
  const DUE = at('2026-12-04 03:00');
  beforeEach(async () => {
    await kitchen.tick(NIGHT);
    for (const task of ['a', 'b', 'c']) await kitchen.parts.books.reminders.add(own(task, DUE), NIGHT);
  });

  test('asks for a pause: nothing more is sent until then, and nothing is lost', async () => {
    const { tick, channel } = kitchen;
    channel.onSend = () => {
      throw new DeliveryFailure({ reason: 'ratelimited', outcome: 'not_sent', retryAfterMs: 2 * MINUTE });
    };
    await tick(DUE);
    channel.onSend = () => {};
    await tick(DUE + MINUTE);
    expect(channel.titles()).toEqual([]);
    await tick(DUE + 2 * MINUTE);
    expect(channel.titles().sort()).toEqual(['Reminder: a.', 'Reminder: b.', 'Reminder: c.']);
  });

  test('dies after sending, before recording: the history is looked at, and it is not sent twice', async () => {
    const { tick, channel, parts } = kitchen;
    const dying = createTick({
      ...parts,
      queue: {
        ...parts.queue,
        recordSent: () => Promise.reject(new Error('killed')),
      },
    });
    await dying(DUE);
    expect(channel.arrived).toHaveLength(3);
    await tick(DUE + 6 * MINUTE);
    expect(channel.looked).toBe(3);
    expect(channel.arrived).toHaveLength(3);
    expect((await parts.books.reminders.open(DUE + 6 * MINUTE)).length).toBe(3);
  });

  test('gives no answer: it is looked for before it is sent again', async () => {
    const { tick, channel } = kitchen;
    let lost = 0;
    channel.onSend = (message) => {
      lost += 1;
      if (lost === 1) channel.arrived.push(message);
      if (lost <= 2) throw new DeliveryFailure({ reason: 'no_answer', outcome: 'unanswered' });
    };
    await tick(DUE);
    await tick(DUE + MINUTE);
    expect(channel.looked).toBe(2);
    expect(channel.titles().sort()).toEqual(['Reminder: a.', 'Reminder: b.', 'Reminder: c.']);
  });

  test('refuses: it is not tried again, and the list says why', async () => {
    const { tick, channel, parts } = kitchen;
    channel.onSend = () => {
      throw new DeliveryFailure({ reason: 'not_in_channel', outcome: 'refused' });
    };
    await tick(DUE);
    channel.onSend = () => {};
    await tick(DUE + HOUR);
    expect(channel.titles()).toEqual([]);
    expect(await parts.books.reminders.undelivered(NIGHT)).toHaveLength(3);
  });

  test('is down until it helps nobody: it is listed as missed when the surface is back', async () => {
    const { tick, channel } = kitchen;
    channel.onSend = () => {
      throw new DeliveryFailure({ reason: 'no_answer', outcome: 'unanswered' });
    };
    for (let hour = 0; hour <= 13; hour += 1) await tick(DUE + hour * HOUR);
    channel.onSend = () => {};
    await tick(DUE + 13.5 * HOUR);
    await tick(DUE + 14 * HOUR);
    const missed = channel.read().filter(({ data }) => data.kind === 'missed');
    expect(JSON.stringify(missed)).toContain('a: Fri Dec 4, 3:00 am CST');
  });

  test('several instances tick at once: each thing is said once', async () => {
    const ticks = [1, 2, 3, 4].map(() => createTick(kitchen.parts));
    await Promise.all(ticks.map((tick) => tick(DUE)));
    expect(kitchen.channel.titles().sort()).toEqual(['Reminder: a.', 'Reminder: b.', 'Reminder: c.']);
    expect(kitchen.errors).toEqual([]);
  });

  test('a program that stops leaves the rest to the next one', async () => {
    let sent = 0;
    kitchen.channel.onSend = () => {
      sent += 1;
    };
    await createTick({ ...kitchen.parts, isStopping: () => sent >= 1 })(DUE);
    expect(kitchen.channel.titles()).toHaveLength(1);
    await kitchen.tick(DUE + MINUTE);
    expect(kitchen.channel.titles()).toHaveLength(2);
  });
});

test('the kitchen’s zone moves: its schedule and people’s wall times move along', async () => {
  const { books } = kitchen.parts;
  await kitchen.tick(NIGHT);
  const wall = { date: '2026-12-05', time: '15:00', zone: 'America/Chicago' } as never;
  await books.reminders.add({ ...own('soak dates', at('2026-12-05 15:00')), wall }, NIGHT);
  const settings = { ...kitchen.parts.book.settings, timeZone: 'America/New_York' };
  await createTick({ ...kitchen.parts, book: { ...kitchen.parts.book, settings } })(NIGHT);
  const upcoming = await books.reminders.upcoming(99);
  const dueOf = (key: string) => upcoming.find((reminder) => reminder.key === key)?.dueMs;
  expect(dueOf('own:soak dates')).toBe(at('2026-12-05 15:00', 'America/New_York'));
  expect(dueOf('stock_check:2026-12-05')).toBe(at('2026-12-05 08:00', 'America/New_York'));
});

describe("people's own before a game", () => {
  const cooler = (nowMs: number) =>
    kitchen.parts.books.reminders.add(
      {
        key: `own:${nowMs}`,
        kind: 'own',
        audience: 'kitchen',
        about: { task: 'fill the cooler', by: 'IN-01', gameId: 'g1', minutesBefore: 120 },
        planned: true,
        dueMs: at('2026-12-05 12:00'),
        helpsUntilMs: at('2026-12-05 14:00'),
      },
      nowMs,
    );
  const told = () => kitchen.channel.titles().filter((title) => title.includes('fill the cooler'));

  test('are told once, and once more when the game moves to later after that', async () => {
    const { games } = kitchen.parts.books;
    await games.put([game()]);
    await cooler(at('2026-12-01 09:00'));
    await kitchen.tick(at('2026-12-05 12:00'));
    expect(told()).toEqual(['Reminder: fill the cooler.']);
    await games.put([game({ date: '2026-12-06' as never })]);
    for (const wall of ['2026-12-05 12:30', '2026-12-05 14:30', '2026-12-06 11:59'])
      await kitchen.tick(at(wall));
    expect(told()).toEqual([]);
    await games.put([game({ date: '2026-12-07' as never })]);
    await kitchen.tick(at('2026-12-06 12:00'));
    expect(told()).toEqual([]);
    await kitchen.tick(at('2026-12-07 12:00'));
    await kitchen.tick(at('2026-12-07 12:01'));
    expect(told()).toEqual(['Reminder: fill the cooler.']);
  });

  test('are not told for a game that is off or gone, and not again once done', async () => {
    const { games, reminders } = kitchen.parts.books;
    await games.put([game({ status: 'cancelled' })]);
    await cooler(at('2026-12-01 09:00'));
    await kitchen.tick(at('2026-12-05 12:00'));
    expect(told()).toEqual([]);
    await games.put([game({ date: '2026-12-06' as never })]);
    await kitchen.tick(at('2026-12-06 12:00'));
    expect(told()).toEqual(['Reminder: fill the cooler.']);
    const [open] = (await reminders.open(at('2026-12-06 12:01'))).filter(({ kind }) => kind === 'own');
    await reminders.done(open?.id ?? '', 'IN-01', at('2026-12-06 12:01'));
    await games.put([game({ date: '2026-12-08' as never })]);
    await kitchen.tick(at('2026-12-08 12:00'));
    expect(told()).toEqual([]);
  });
});
