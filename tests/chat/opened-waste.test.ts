import { describe, expect, test } from 'vitest';
import { conversing } from '../helpers/conversing.ts';

/** A Wednesday. A gallon of milk is 16 cups of 244 g; the demo kitchen pays $3.89 for 3,904 g. */
const { answer, data, shown } = conversing('2026-12-02 10:00');

const opened = async () => {
  await answer('received 1 gallon 2% milk', { when: '2026-12-02 10:00' });
  await answer('opened 2% milk', { when: '2026-12-02 10:01' });
};

describe('an opened package', () => {
  test('is no waste before its last day, about to be on it, and waste after it', async () => {
    await opened();
    // FDA Food Code 3-501.17: the day it is opened is day 1 of 7, so Tuesday the 8th is the last.
    expect(await data('waste in dollars this week', { when: '2026-12-06 10:00' })).toMatchObject({
      pastDate: [],
      endsSoon: [],
    });
    expect(await data('waste in dollars this week', { when: '2026-12-07 10:00' })).toMatchObject({
      pastDateCents: 0,
      endsSoon: [{ massG: 3_904, useBy: '2026-12-08', cents: 389 }],
    });
    expect(await data('waste in dollars this week', { when: '2026-12-08 10:00' })).toMatchObject({
      pastDateCents: 0,
      endsSoonCents: 389,
    });
    expect(await data('waste in dollars this week', { when: '2026-12-09 10:00' })).toMatchObject({
      pastDate: [{ massG: 3_904, cents: 389 }],
      pastDateCents: 389,
      endsSoonCents: 0,
    });
    expect(await shown('waste in dollars this week')).toMatch(/Opened and past its date.*\$3\.89 at most/s);
  });

  test('is worth what is left of it', async () => {
    await opened();
    // By hand: half a cup, 122 g, goes into 12 bars; 389 x 3782 / 3904 = 376.8 cents.
    await answer('made 12 oat bars', { when: '2026-12-03 10:00' });
    expect(await data('waste in dollars this week', { when: '2026-12-09 10:00' })).toMatchObject({
      pastDate: [{ massG: 3_782, cents: 377 }],
    });
  });

  test('is gone when it was used up, whatever came after it', async () => {
    await opened();
    await answer('received 1 gallon 2% milk', { when: '2026-12-05 10:00' });
    expect(await data('waste in dollars this week', { when: '2026-12-09 10:00' })).toMatchObject({
      pastDateCents: 389,
    });
    await answer('tossed 1 gallon 2% milk');
    const week = await data('waste in dollars this week');
    expect(week).toMatchObject({ tossedCents: 389, pastDate: [], pastDateCents: 0 });
    expect(await data('how much 2% milk left')).toMatchObject({ onHandG: 3_904 });
    await answer('undo');
    expect(await data('waste in dollars this week')).toMatchObject({ tossedCents: 0, pastDateCents: 389 });
  });

  test('with the maker’s own date goes by the earlier of both', async () => {
    await answer('received 1 gallon 2% milk', { when: '2026-12-02 10:00' });
    await answer('opened 2% milk, use by 12/4', { when: '2026-12-02 10:01' });
    expect(await data('waste in dollars this week', { when: '2026-12-05 10:00' })).toMatchObject({
      pastDateCents: 389,
    });
  });

  test('of a food that keeps without cold is never past a date', async () => {
    await answer('received 5 lb honey', { when: '2026-12-02 10:00' });
    await answer('opened honey', { when: '2026-12-02 10:01' });
    expect(await data('waste in dollars this week', { when: '2026-12-30 10:00' })).toMatchObject({
      pastDate: [],
      endsSoon: [],
    });
  });

  test('is told with the week, with what expires and with what must be thrown out', async () => {
    await opened();
    expect(await shown('what expires tomorrow', { when: '2026-12-07 10:00' })).toMatch(
      /Milk, 2 %.*last\s+day Tue Dec 8/s,
    );
    expect((await data('what expires today')).openedEnding).toBeUndefined();
    expect(await data('what must be thrown out', { when: '2026-12-09 10:00' })).toMatchObject({
      openedPastDate: [{ cents: 389 }],
    });
    await answer('tossed 1 gallon 2% milk');
    expect(await data('week summary')).toMatchObject({ tossedCents: 389, pastDateCents: 0 });
    expect(await shown('week summary')).toContain('Waste cost $3.89');
  });

  test('and what it cost is the kitchen’s own', async () => {
    await opened();
    const asking = { role: 'athlete', who: 'WP-07', when: '2026-12-09 10:00' } as const;
    for (const text of ['week summary', 'what must be thrown out', 'what expires tomorrow'])
      expect(await shown(text, asking)).not.toMatch(/\$|Milk/);
  });
});
