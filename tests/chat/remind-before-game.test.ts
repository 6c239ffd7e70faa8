import { describe, expect, test } from 'vitest';
import { conversing } from '../helpers/conversing.ts';

const { answer, shown: laidOut, refused } = conversing('2026-11-24 09:00');
/** As people read it, on one line. */
const shown = async (...asked: Parameters<typeof laidOut>): Promise<string> =>
  (await laidOut(...asked)).replace(/\s+/g, ' ');

describe('a reminder before the game', () => {
  test('moves with its game, is called off and comes back with it, and the answer says so', async () => {
    await answer('game Sat 2pm vs Riverton');
    const set = await shown('remind us 2 hours before the game to fill the cooler');
    const code = /R\d+/.exec(set)?.[0];
    expect(set).toContain(`${code}: fill the cooler, Sat Nov 28, 12:00 pm CST.`);
    expect(set).toContain('It moves with the game, and falls away if the game is off.');
    expect(await shown('game saturday is now sunday 4pm')).toContain(
      `Reminder ${code}, fill the cooler, moves from Sat Nov 28, 12:00 pm CST to Sun Nov 29, 2:00 pm CST`,
    );
    expect(await shown('reminders')).toContain(`${code} · Sun Nov 29, 2:00 pm CST · fill the cooler`);
    expect(await shown('cancel sunday game')).toContain(
      `Reminder ${code}, fill the cooler, Sun Nov 29, 2:00 pm CST, falls away`,
    );
    expect(await shown('reminders')).not.toContain('fill the cooler');
    expect(await shown('undo')).toContain(
      `Reminder ${code}, fill the cooler, is on again: Sun Nov 29, 2:00 pm CST`,
    );
  });

  test('goes with a game far ahead, too: it comes nearer with it', async () => {
    await answer('game 2027-01-20 6pm vs Riverton');
    await answer('remind us the day before the game at 3pm to wash the coolers');
    expect(await shown('game moved to dec 1 6pm')).toMatch(
      /wash the coolers, moves from Tue Jan 19, 3:00 pm CST to Mon Nov 30, 3:00 pm CST/,
    );
  });

  test.each([
    ['remind us 2 hours before the Mill Bay game to fill the cooler', 'Sat Dec 5, 11:00 am CST'],
    ["remind us 2 hours before saturday's game to fill the cooler", 'Sat Nov 28, 12:00 pm CST'],
    ['remind me to fill the cooler 90 min before kickoff', 'Sat Dec 5, 11:30 am CST'],
    ['remind us an hour and a half before the Riverton game to fill the cooler', 'Sat Nov 28, 12:30 pm CST'],
    ['remind us the day before the Riverton game at 3pm to fill the cooler', 'Fri Nov 27, 3:00 pm CST'],
  ])('%s', async (text, when) => {
    await answer('game Sat 2pm vs Riverton');
    await answer('game 12/5 1pm at Mill Bay');
    expect(await shown(text)).toContain(`: fill the cooler, ${when}.`);
  });

  test('of a game nobody knows, or whose start nobody said, is refused with what to type', async () => {
    await answer('game Sat vs Riverton');
    expect(
      (await refused('remind us 2 hours before the Oakdale game to fill the cooler'))?.message,
    ).toContain('I know no game "oakdale"');
    const unsaid = await refused('remind us 2 hours before the game to fill the cooler');
    expect(unsaid?.message).toContain('nobody has said when it starts');
    expect(unsaid?.hint).toContain('game 2026-11-28 is at 2pm');
  });

  test('stays where a person put it', async () => {
    await answer('game Sat 2pm vs Riverton');
    await answer('remind us 2 hours before the game to fill the cooler');
    const code = /(R\d+) · [^·]*· fill the cooler/.exec(await shown('reminders'))?.[1];
    expect(await shown(`move ${code} to sat 9am`)).toContain('It no longer moves with the game.');
    await answer('game saturday is now sunday 4pm');
    expect(await shown('reminders')).toContain(`${code} · Sat Nov 28, 9:00 am CST · fill the cooler`);
  });

  test('a question that is still open does not lend its task to a new reminder', async () => {
    await answer('game Sat 2pm vs Riverton');
    await answer('remind us thursday to soak dates');
    expect(await shown('remind us 2 hours before the game to fill the cooler')).toContain(
      ': fill the cooler,',
    );
  });
});

describe('snooze', () => {
  test('only puts off: minutes count from when it comes', async () => {
    await answer('remind us thursday 3pm to soak dates');
    expect(await shown('snooze R1')).toContain('R1: soak dates, now Thu Nov 26, 3:15 pm CST.');
    expect(await shown('snooze R1 30 min')).toContain('now Thu Nov 26, 3:45 pm CST.');
    expect(await shown('snooze R1 to friday 9am')).toContain('now Fri Nov 27, 9:00 am CST.');
  });

  test('to a time before it comes is refused, with what to type instead', async () => {
    await answer('remind us thursday 3pm to soak dates');
    const problem = await refused('snooze R1 to thursday 9am');
    expect(problem?.message).toContain('R1 comes Thu Nov 26, 3:00 pm CST anyway; a snooze only puts off.');
    expect(problem?.hint).toContain('move R1 to 2026-11-26 09:00');
    expect(await shown('move R1 to 2026-11-26 09:00')).toContain('now Thu Nov 26, 9:00 am CST.');
  });

  test('counts from now when it is past', async () => {
    await answer('remind us thursday 3pm to soak dates');
    expect(await shown('snooze R1 30 min', { when: '2026-11-26 15:10' })).toContain(
      'now Thu Nov 26, 3:40 pm CST.',
    );
  });
});
