import { describe, expect, test } from 'vitest';
import { refuseImpossibleMoment } from '../../src/chat/impossible-moment.ts';
import { conversing } from '../helpers/conversing.ts';

const { answer, shown, refused } = conversing('2026-12-04 09:00');

describe('a day or hour that there is not', () => {
  test.each([
    'game 13/5 2pm vs Oakdale',
    'game 2/30 2pm vs Oakdale',
    'game 2026-02-29 2pm vs Oakdale',
    'game sat 14:75 vs Oakdale',
    'remind us feb 30 3pm to soak dates',
    'remind us tomorrow 25:00 to soak dates',
    'made 40 oat bars at 25:00',
  ])('is said back and nothing is written down: %s', async (text) => {
    await answer('game Sat 6pm vs Mill Bay');
    const problem = await refused(text);
    expect([problem?.code, problem?.message]).toEqual([
      'bad_quantity',
      expect.stringContaining('nothing was written down'),
    ]);
    expect(await shown('undo')).toContain('the new game');
    expect((await refused('undo'))?.code).toBe('not_found');
  });

  test.each([
    'game 2/29 2pm vs Oakdale',
    'game dec 12 2:30pm vs Oakdale',
    'remind us sat 9am to mix 13/16 cup',
    'made 40 oat bars with lot 13/45 of vanilla whey',
    'remind us may 5 3pm to soak dates',
  ])('is not seen in: %s', (text) => {
    expect(() => refuseImpossibleMoment(text, 'game')).not.toThrow();
  });
});

test('"friday 6" on a friday keeps the hour while it asks for the day, then for the half of the day', async () => {
  const day = await answer('game friday 6 vs Riverton');
  expect(day.next.map(({ says }) => says)).toEqual([
    'game 2026-12-04 6 vs riverton',
    'game 2026-12-11 6 vs riverton',
  ]);
  const half = await answer(day.next[1]?.says ?? '');
  expect(half.next.map(({ says }) => says)).toEqual([
    'game 2026-12-11 6am vs riverton',
    'game 2026-12-11 6pm vs riverton',
  ]);
});
