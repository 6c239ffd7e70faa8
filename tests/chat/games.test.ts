import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Answer } from '../../src/chat/answer.ts';
import { createChat, type Reply } from '../../src/chat/chat.ts';
import { plainText } from '../../src/chat/plain-text.ts';
import type { PersonRole } from '../../src/chat/request.ts';
import type { CalendarReach } from '../../src/kitchen/games/calendar/reach.ts';
import { readCalendar } from '../../src/kitchen/games/calendar/read-calendar.ts';
import { Problem } from '../../src/nutrition/problem.ts';
import { openKitchen } from '../../src/open-kitchen.ts';
import type { Database } from '../../src/store/database.ts';
import { gameBooksIn } from '../../src/store/game-book.ts';
import { ledgersIn } from '../../src/store/ledger.ts';
import { reminderBooksIn } from '../../src/store/reminders/book.ts';
import { CONTEXT, calendarFile, calendarOf } from '../helpers/calendars.ts';
import { freshDatabase } from '../helpers/database.ts';
import { at } from '../helpers/reminder-kitchen.ts';

const NOW = at('2026-11-24 09:00');
let database: Database;
let rooms = 0;
beforeAll(async () => {
  database = await freshDatabase();
});
afterAll(() => database.close());

interface Room {
  ask(text: string, role?: PersonRole): Promise<Reply>;
  /** The answer as people read it; a problem as its message and hint. */
  read(text: string, role?: PersonRole): Promise<string>;
  answer(text: string, role?: PersonRole): Promise<Answer>;
}

/** The demo kitchen with an empty memory of its own, on the engine under test. */
async function room(calendars: CalendarReach = {}, clock: number | (() => number) = NOW): Promise<Room> {
  const now = typeof clock === 'number' ? () => clock : clock;
  const demo = await openKitchen({ nowMs: now });
  const kitchen = {
    ...demo,
    calendars,
    games: gameBooksIn(database),
    ledgers: ledgersIn(database, now),
    reminders: reminderBooksIn(database),
  };
  const chat = createChat(kitchen, (error) => {
    throw error;
  });
  const workspace = `W${++rooms}`;
  const ask = (text: string, role: PersonRole = 'staff'): Promise<Reply> =>
    chat.ask({
      text,
      asker: { role, who: role, workspace },
      conversation: workspace,
      isPrivate: true,
      nowMs: now(),
    });
  return {
    ask,
    async read(text, role) {
      const { answer, error } = await ask(text, role);
      return answer ? plainText(answer, 1_000) : `${error?.message} ${error?.hint}`;
    },
    async answer(text, role) {
      const { answer, error } = await ask(text, role);
      if (!answer) throw new Error(`"${text}": ${error?.message}`);
      return answer;
    },
  };
}

describe('a game told in chat', () => {
  test('is kept with its day, zone, prep, packing and why', async () => {
    const { answer, read } = await room();
    const kept = await answer('game Sat 2pm vs Riverton');
    expect(kept.title).toBe('Game kept: Sat Nov 28, 2:00 pm CST: vs Riverton (home), in 4 days');
    expect(kept.data).toMatchObject({ make_pieces: 60, slabs: 5, recipe: 'oat-bars' });
    const text = plainText(kept, 1_000);
    expect(text).toContain('- Prep Fri Nov 27, 9:00 am CST: 60 oat bars (5 slabs)');
    expect(text).toContain('44 people (the usual number) × 1 + 10 % spare = 49 oat bars');
    expect(await read('when is the next game')).toContain(
      'In 4 days: Sat Nov 28, 2:00 pm CST: vs Riverton (home)',
    );
  });

  test('said twice is one game', async () => {
    const { answer } = await room();
    await answer('game Sat 2pm vs Riverton');
    await answer('game Sat 2pm vs Riverton');
    expect((await answer('how many games this week')).title).toBe('1 game, Tue Nov 24 to Mon Nov 30');
  });

  test('with a departure nobody called am or pm: before the start, and said', async () => {
    const { read } = await room();
    const text = await read('game 12/5 away 9am leave 6:30');
    expect(text).toContain('I took the departure as Sat Dec 5, 6:30 am CST');
    expect(text).toContain('Pack Sat Dec 5, 5:30 am CST');
    expect(await read('when does the bus leave')).toContain('Leaves Sat Dec 5, 6:30 am CST: away game');
  });

  test('with people and another snack', async () => {
    const { answer } = await room();
    const { data } = await answer('game Sat 2pm at Stone Bridge 30 people with cherry bars leaves 7am');
    expect(data).toMatchObject({ recipe: 'cherry-oat-bars', slabs: 2, make_pieces: 40, home_away: 'away' });
  });

  test('moves, with its departure and prep, and says what it was', async () => {
    const { answer, read } = await room();
    await answer('game Sat 2pm vs Riverton leaves 11:30am');
    const moved = await read('game Saturday is now Friday 6pm');
    expect(moved).toContain(
      'Moved: Fri Nov 27, 6:00 pm CST: vs Riverton (home). It was Sat Nov 28, 2:00 pm CST',
    );
    expect(moved).toContain('Leaves Fri Nov 27, 3:30 pm CST');
    expect(moved).toContain(
      'Prep moves from Fri Nov 27, 9:00 am CST to Thu Nov 26, 9:00 am CST, with its reminder',
    );
    expect(await read('game moved to 3pm')).toContain('Moved: Fri Nov 27, 3:00 pm CST');
    expect(await read('did anything change in the schedule')).toContain(
      'vs Riverton moved to Fri Nov 27, 3:00 pm CST',
    );
  });

  test('is cancelled with its prep, shown as cancelled, and put on again', async () => {
    const { answer, read } = await room();
    await answer('game Sat 2pm vs Riverton');
    const cancelled = await read("saturday's game is cancelled");
    expect(cancelled).toContain(
      'Prep Fri Nov 27, 9:00 am CST: 60 oat bars (5 slabs) falls away, with its reminder',
    );
    expect(await read('schedule')).toContain('vs Riverton (home), cancelled');
    expect(await read('is the saturday game cancelled?')).toContain('Cancelled: vs Riverton');
    expect(await read('cancel the riverton game')).toContain('already');
    expect(await read('game 2026-11-28 2pm vs Riverton')).toContain('On again: Sat Nov 28, 2:00 pm CST');
    expect((await answer('games')).title).toBe('1 game, Tue Nov 24 to Mon Nov 30');
  });

  test('two that fit are asked about, each choice a whole request', async () => {
    const { answer } = await room();
    await answer('soccer game Sat 2pm vs Riverton');
    await answer('volleyball game Sat 6pm vs Mill Bay');
    const asked = await answer("saturday's game is cancelled");
    expect(asked.title).toBe('Which game? 2 fit.');
    const [first] = asked.next;
    expect((await answer(first?.says ?? '')).title).toContain('Cancelled: Sat Nov 28, 2:00 pm CST');
  });

  test('what happened to games of other kitchens is not seen', async () => {
    const [one, two] = [await room(), await room()];
    await one.answer('game Sat 2pm vs Riverton');
    expect(await two.read('schedule')).toContain('No game from');
  });
});

describe('what means two things is asked, what is past is refused', () => {
  test.each([
    ['game tuesday 2pm vs Riverton', 'Which one: today, Tue Nov 24, or a week later?'],
    ['game friday 6', 'Morning or evening: 6:00 am or 6:00 pm on Fri Nov 27?'],
    ['game Sat 2pm leave 5pm', 'The bus would leave after the game has begun.'],
    ['game 2026-11-01', 'Sun Nov 1 is past.'],
    ['game 11/20', 'Sat Nov 20 has passed this year.'],
    ['game today 8am', 'Which one'],
    ['game moved to 3pm', 'No game is known.'],
    ['game 2pm vs Riverton', 'Which day?'],
    ['game Sat 2pm vs Riverton 90000 people', '90000 is not a number of people.'],
  ])('%s', async (text, says) => {
    const { read } = await room();
    expect(await read(text)).toContain(text === 'game today 8am' ? 'has passed' : says);
  });

  test("today's weekday with an hour gone by is next week's", async () => {
    const { read } = await room();
    expect(await read('game tuesday 8am vs Mill Bay')).toContain('Game kept: Tue Dec 1, 8:00 am CST');
  });

  test('each choice of a question is understood', async () => {
    const { answer } = await room();
    for (const text of ['game friday 6 vs Riverton', 'game tuesday 2pm vs Mill Bay']) {
      const asked = await answer(text);
      expect(asked.next).toHaveLength(2);
      expect((await answer(asked.next[1]?.says ?? '')).title).toMatch(/^Game kept: /);
    }
  });
});

describe('calendars', () => {
  const files: CalendarReach = { file: async (path) => calendarFile(path.replace('.ics', '')) };

  test('a file is read, and read again without doubling', async () => {
    const { read } = await room(files);
    expect(await read('import several-sports.ics')).toContain('several-sports.ics: 7 added');
    expect(await read('import several-sports.ics')).toContain('7 unchanged');
    expect(await read('how many days until the next volleyball match')).toContain('In 12 days');
    expect(await read('list calendars')).toContain(
      'several-sports.ics: a file, read Tue Nov 24, 9:00 am CST',
    );
    expect(await read('forget calendar several')).toContain('with its 7 games');
    expect(await read('schedule next week')).toContain('No game from');
  });

  test('broken events come with their lines, the others are kept', async () => {
    const text = await (await room(files)).read('import one-broken-event.ics');
    expect(text).toContain('2 added');
    expect(text).toContain(
      'line 22: "Soccer vs Cedar Point" was left out: its RRULE (line 27) cannot be read.',
    );
  });

  test('an address is read again only when it changed; a move says so, a lost game is asked about', async () => {
    const event = (uid: string, start: string, name: string) => [
      `UID:${uid}`,
      `DTSTART;TZID=America/Chicago:${start}`,
      `SUMMARY:Soccer vs ${name}`,
    ];
    const versions = [
      calendarOf([event('a', '20261205T140000', 'Riverton'), event('b', '20261212T110000', 'Mill Bay')]),
      calendarOf([event('a', '20261206T160000', 'Riverton')]),
    ];
    let version = 0;
    const { read } = await room({
      fetch: async (url, etag) => {
        expect(url).toBe('https://example.org/soccer.ics');
        if (etag === String(version)) return { kind: 'unchanged' };
        return { kind: 'read', bytes: versions[version] as Buffer, etag: String(version) };
      },
    });
    expect(await read('import webcal://example.org/soccer.ics')).toContain('soccer.ics: 2 added');
    expect(await read('import https://example.org/soccer.ics')).toContain('Nothing new');
    version = 1;
    const text = await read('import https://example.org/soccer.ics');
    expect(text).toContain('soccer.ics: 1 moved');
    expect(text).toContain('soccer vs Riverton moved: Sun Dec 6, 4:00 pm CST, was Sat Dec 5, 2:00 pm CST');
    expect(text).toContain('No longer in the calendar, still planned');
    expect(await read('is the mill bay game still on?')).toContain('no longer in its calendar');
  });

  test('a game typed before is one with the calendar that lists it, and keeps its people', async () => {
    const { read, answer } = await room(files);
    await answer('game 12/5 2pm vs Riverton 20 people leaves 9am');
    expect(await read('import plain.ics')).toContain('1 game was typed before');
    const { title, data } = await answer('schedule 12/5');
    expect(title).toBe('1 game, Sat Dec 5');
    expect(data.plans).toMatchObject([{ make_pieces: 24 }]);
  });

  test('two games the calendar lists against a typed one: only the one at its time is that one', async () => {
    const event = (uid: string, hour: number) => [
      `UID:${uid}`,
      `DTSTART;TZID=America/Chicago:20261205T${hour}0000`,
      'SUMMARY:Softball vs Riverton',
    ];
    const { answer } = await room({ file: async () => calendarOf([event('a', 11), event('b', 14)]) });
    await answer('game 12/5 2pm vs Riverton leaves 9am');
    expect((await answer('import softball.ics')).data).toMatchObject({ added: 2 });
    const { data } = await answer('schedule 12/5');
    const [early, late] = data.games as { time: string; departs?: string }[];
    expect(early).not.toHaveProperty('departs');
    expect(late).toMatchObject({ time: '14:00', departs: '2026-12-05T15:00:00.000Z' });
  });

  test('our own export read back changes nothing, and is no games of prep in a fresh kitchen', async () => {
    let exported = '';
    const reach: CalendarReach = { file: async () => Buffer.from(exported) };
    const [home, fresh] = [await room(reach), await room(reach)];
    await home.answer('game 12/5 2pm vs Riverton 20 people leaves 9am');
    exported = String((await home.answer('export schedule')).attachments?.[0]?.content);
    const skipped = '2 entries of our own for prep and packing were skipped';
    for (let time = 1; time <= 2; time++) {
      const text = await home.read('import prep-schedule.ics');
      expect(text).toContain('1 unchanged');
      expect(text).toContain(skipped);
    }
    expect((await home.answer('schedule 12/5')).data.games).toMatchObject([
      { time: '14:00', departs: '2026-12-05T15:00:00.000Z' },
    ]);
    expect(await fresh.read('import prep-schedule.ics')).toContain(skipped);
    const { title, data } = await fresh.answer('schedule 12/5');
    expect(title).toBe('1 game, Sat Dec 5');
    expect(data.games).toMatchObject([{ time: '14:00', opponent: 'Riverton' }]);
  });

  test('a game moved in our own export moves; one that was moved here since stays', async () => {
    let exported = '';
    let now = NOW;
    const { read, answer } = await room({ file: async () => Buffer.from(exported) }, () => now);
    await answer('game 12/5 2pm vs Riverton 20 people leaves 9am');
    exported = String((await answer('export schedule')).attachments?.[0]?.content);
    now += 60_000;
    const old = exported;
    exported = exported.replaceAll('20261205T200000Z', '20261205T210000Z');
    expect(await read('import prep-schedule.ics')).toContain(
      'vs Riverton moved: Sat Dec 5, 3:00 pm CST, was Sat Dec 5, 2:00 pm CST',
    );
    expect(await read('when does the bus leave')).toContain('Leaves Sat Dec 5, 10:00 am CST');
    exported = old;
    expect(await read('import prep-schedule.ics')).toContain('1 unchanged');
  });

  test('what cannot be imported says why and what else to do', async () => {
    const fetching: CalendarReach = {
      fetch: async () => {
        throw new Problem('unavailable', 'The address answers 404, not a calendar.', 'Upload the file.');
      },
    };
    expect(await (await room(fetching)).read('import https://example.org/a.ics')).toContain('404');
    expect(await (await room(fetching)).read('import schedule.ics')).toContain('There is no such file here.');
    expect(await (await room(files)).read('import web-page.ics')).toContain(
      'This is a web page, not a calendar.',
    );
    expect(await (await room(files)).read('import')).toContain('Which calendar?');
    expect((await (await room(files)).ask('import plain.ics', 'athlete')).error?.code).toBe('not_allowed');
  });
});

describe('the days of a question', () => {
  test.each([
    ['schedule next month', 'Tue Dec 1 to Thu Dec 31', 1],
    ['schedule december', 'Tue Dec 1 to Thu Dec 31', 1],
    ['games in dec', 'Tue Dec 1 to Thu Dec 31', 1],
    ['schedule this month', 'Tue Nov 24 to Mon Nov 30', 0],
    ['schedule november', 'Tue Nov 24 to Mon Nov 30', 0],
    ['games in march', 'Mon Mar 1 to Wed Mar 31', 0],
    ['schedule dec and jan', 'Tue Dec 1 to Sun Jan 31', 1],
    ['schedule next 2 weeks', 'Tue Nov 24 to Mon Dec 7', 1],
    ['schedule week of dec 3', 'Mon Nov 30 to Sun Dec 6', 1],
    ['schedule last week', 'Mon Nov 16 to Sun Nov 22', 0],
  ])('%s', async (text, days, games) => {
    const { answer } = await room();
    await answer('game 12/5 2pm vs Riverton');
    const { title, data } = await answer(text);
    expect(title).toContain(days);
    expect(data.games).toHaveLength(games);
  });
});

describe('the schedule', () => {
  test('shows games, preps, packing and checks to the kitchen, games alone to athletes', async () => {
    const { answer, read } = await room();
    await answer('game Sat 2pm vs Riverton');
    const kitchen = await read('schedule');
    expect(kitchen).toContain('- Fri Nov 27, 9:00 am CST: 60 oat bars (5 slabs), vs Riverton');
    expect(kitchen).toContain('- Sat Nov 28, 1:00 pm CST: 49 oat bars, vs Riverton');
    expect(kitchen).toContain(
      'Every day: stock check 6:45 am; fridge readings 6:45 am and 2:00 pm (CST). No prep on Sun.',
    );
    const athlete = await read('schedule', 'athlete');
    expect(athlete).toContain('vs Riverton (home)');
    expect(athlete).not.toMatch(/oat bars|stock check/);
  });

  test('is exported as a calendar that reads back to the same instants, and whose entries keep their names', async () => {
    const { answer } = await room();
    await answer('soccer game Sat 2pm vs Riverton');
    const content = (await answer('export schedule')).attachments?.[0]?.content ?? '';
    const again = (await answer('export schedule')).attachments?.[0]?.content;
    expect(again).toBe(content);
    const lines = content.split('\r\n');
    expect(content.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(Math.max(...lines.map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(75);
    expect(content).toContain('DTSTAMP:20261124T150000Z');
    // Under our own names prep and packing would be known and skipped.
    const readBack = (text: string) =>
      readCalendar(Buffer.from(text.replaceAll('@batchbell', '@example.org')), CONTEXT);
    const { games, problems } = readBack(content);
    expect(problems).toEqual([]);
    expect(games.map(({ title, date, time }) => `${date} ${time} ${title}`)).toEqual([
      '2026-11-27 09:00 Prep 60 oat bars for vs Riverton',
      '2026-11-28 13:00 Pack 49 oat bars vs Riverton',
      '2026-11-28 14:00 Game: soccer vs Riverton',
    ]);
    await answer('game saturday is now friday 6pm');
    const moved = readBack((await answer('export schedule')).attachments?.[0]?.content ?? '');
    expect(moved.games.map(({ uid }) => uid).sort()).toEqual(games.map(({ uid }) => uid).sort());
  });

  test('with nothing to export says so', async () => {
    expect(await (await room()).read('export schedule')).toContain('There is no game to come to export.');
  });
});
