import { describe, expect, test } from 'vitest';
import { kindsToUndo } from '../../src/chat/stock/undo-meant.ts';
import { calendarOf } from '../helpers/calendars.ts';
import { conversing } from '../helpers/conversing.ts';

let feed = calendarOf([]);
const calendarFrom = (events: string[][]): void => {
  feed = calendarOf(events);
};
const {
  answer,
  shown: laidOut,
  data,
  refused,
} = conversing('2026-11-24 09:00', undefined, {
  fetch: async () => ({ kind: 'read', bytes: feed }),
});
/** As people read it, on one line. */
const shown = async (...asked: Parameters<typeof laidOut>): Promise<string> =>
  (await laidOut(...asked)).replace(/\s+/g, ' ');
const event = (uid: string, start: string, name: string) => [
  `UID:${uid}`,
  `DTSTART;TZID=America/Chicago:${start}`,
  `SUMMARY:Soccer vs ${name}`,
];
const SEASON = [event('a', '20261205T140000', 'Riverton'), event('b', '20261212T110000', 'Mill Bay')];
const december = async (): Promise<unknown[]> =>
  ((await data('schedule 2026-12-05')).games as unknown[]).concat(
    (await data('schedule 2026-12-12')).games as unknown[],
  );

describe('"undo" takes back a game', () => {
  test('that was added: off the list, its prep and reminders fall away', async () => {
    await answer('game Sat 2pm vs Riverton');
    expect(await shown('reminders')).toContain('Prep for vs Riverton');
    const text = await shown('undo');
    expect(text).toContain(
      'Undone: the new game, Sat Nov 28, 2:00 pm CST: vs Riverton (home). It is off the list.',
    );
    expect(text).toMatch(/Prep Fri Nov 27, 9:00 am CST: .* falls away, with its\s+reminder/);
    expect(await shown('games')).toContain('No game from');
    expect(await shown('reminders')).not.toContain('Prep for vs Riverton');
  });

  test('that was moved, changed or cancelled, one step after another, and names each', async () => {
    await answer('game Sat 2pm vs Riverton');
    await answer('game 52 people saturday');
    await answer('game saturday is now sunday 3pm');
    await answer('cancel sunday game');
    expect(await shown('undo')).toContain('Undone: the cancellation. On again: Sun Nov 29, 3:00 pm CST');
    const moved = await shown('undo');
    expect(moved).toMatch(
      /Undone: vs Riverton is on Sat Nov 28, 2:00 pm CST again, not Sun Nov 29, 3:00 pm\s+CST/,
    );
    expect(moved).toMatch(/Prep moves from Sat Nov 28, 9:00 am CST to Fri Nov 27, 9:00 am CST/);
    expect(await shown('undo')).toContain('Again the usual number of people, not 52 people');
    expect(await shown('undo')).toContain('the new game');
    expect((await refused('undo'))?.code).toBe('not_found');
  });

  test('or a batch, whichever was entered last', async () => {
    await answer('made 40 oat bars');
    await answer('game Sat 2pm vs Riverton');
    await answer('served 4 oat bars', { when: '2026-11-24 12:00' });
    expect(await shown('undo')).toContain('Undone: pieces served');
    expect(await shown('undo')).toContain('Undone: the new game');
    expect(await shown('undo')).toContain('Undone: batch made');
  });

  test('of the asker only, and not once somebody else changed it', async () => {
    await answer('game Sat 2pm vs Riverton');
    expect((await refused('undo', { who: 'IN-01' }))?.code).toBe('not_found');
    await answer('game saturday moved to 3pm', { who: 'IN-01' });
    const problem = await refused('undo');
    expect(problem?.code).toBe('not_possible');
    expect(problem?.message).toContain('vs Riverton was changed since');
    expect(await shown('games')).toContain('3:00 pm');
    await answer('undo', { who: 'IN-01' });
    expect(await shown('games')).toContain('2:00 pm');
    expect(await shown('undo')).toContain('off the list');
  });

  test('once for a request that is delivered twice', async () => {
    await answer('made 40 oat bars');
    await answer('game Sat 2pm vs Riverton', { requestKey: 'g1' });
    await answer('game Sat 2pm vs Riverton', { requestKey: 'g1' });
    await answer('undo', { requestKey: 'u1' });
    expect(await shown('undo', { requestKey: 'u1' })).toContain('nothing was taken back twice');
    expect(await shown('stock')).toContain('40');
  });

  test('saying a game again as it is adds no entry', async () => {
    await answer('game Sat 2pm vs Riverton');
    await answer('game Sat 2pm vs Riverton');
    expect(await shown('undo')).toContain('the new game');
    expect((await refused('undo'))?.code).toBe('not_found');
  });
});

describe('"undo" takes back a calendar', () => {
  test('that was imported: every game, and the calendar, which is not read again', async () => {
    calendarFrom(SEASON);
    await answer('import https://example.org/soccer.ics');
    expect(await december()).toHaveLength(2);
    expect(await shown('undo')).toContain('Undone: the import of soccer.ics. Its 2 games are off the list');
    expect(await december()).toHaveLength(0);
    expect(await shown('which calendars do you read')).toContain('No calendar yet');
  });

  test('and gives a typed game back as it was typed', async () => {
    await answer('game 12/5 2pm vs Riverton 44 people');
    calendarFrom([event('a', '20261205T160000', 'Riverton')]);
    await answer('import https://example.org/soccer.ics');
    expect(await shown('schedule 2026-12-05')).toContain('4:00 pm');
    await answer('undo');
    const back = await shown('schedule 2026-12-05');
    expect(back).toContain('2:00 pm');
    expect(back).not.toContain('4:00 pm');
  });

  test('that was forgotten: the calendar and its games are back', async () => {
    calendarFrom(SEASON);
    await answer('import https://example.org/soccer.ics');
    await answer('forget calendar soccer');
    expect(await december()).toHaveLength(0);
    expect(await shown('undo')).toContain('Undone: soccer.ics is known again, with 2 games and their prep.');
    expect(await december()).toHaveLength(2);
  });

  test('read again: what that changed, and the same feed does not bring it back', async () => {
    calendarFrom(SEASON);
    await answer('import https://example.org/soccer.ics');
    calendarFrom([
      event('a', '20261206T160000', 'Riverton'),
      SEASON[1] as string[],
      event('c', '20261219T110000', 'Cedar Point'),
    ]);
    await answer('import https://example.org/soccer.ics');
    const text = await shown('undo');
    expect(text).toContain('Undone: what the last import of soccer.ics changed in 2 games.');
    expect(text).toMatch(/vs Riverton is on Sat Dec 5, 2:00 pm CST again, not Sun Dec 6, 4:00 pm CST/);
    await answer('import https://example.org/soccer.ics');
    expect(await shown('schedule 2026-12-05')).toContain('2:00 pm');
    expect(await shown('schedule 2026-12-19')).toMatch(/Cedar Point \(home\), cancelled|No game/);
  });

  test('but not an import whose games were changed since: it says what to type instead', async () => {
    calendarFrom(SEASON);
    await answer('import https://example.org/soccer.ics');
    await answer('game 12/5 moved to 3pm', { who: 'IN-01' });
    const problem = await refused('undo');
    expect([problem?.code, problem?.hint]).toEqual([
      'not_possible',
      expect.stringContaining('forget calendar soccer.ics'),
    ]);
    expect(await december()).toHaveLength(2);
  });
});

describe('"undo" of something named', () => {
  test('takes nothing back when the last entry is another', async () => {
    await answer('made 40 oat bars');
    await answer('game Sat 2pm vs Riverton');
    const problem = await refused('undo my count');
    expect(problem?.message).toContain('Your last entry is another: change of a game');
    expect(await shown('undo the game')).toContain('the new game');
    expect(await shown('undo the batch')).toContain('batch made');
  });

  test.each([
    ['undo', undefined],
    ['undo that', undefined],
    ['undo the last serving', ['served', 'moved']],
    ['I entered that by mistake; could you please undo the last serving?', ['served', 'moved']],
    ['undo the game move', ['moved', 'game']],
    ['undo the cancellation', ['game']],
    ['undo the import', ['calendar']],
  ])('%s', (text, kinds) => {
    expect(kindsToUndo(text)).toEqual(kinds);
  });
});
