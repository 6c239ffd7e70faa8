import { expect, test } from 'vitest';
import { daysLeftAt, lastDay, lastDayThawed } from '../../src/kitchen/stock/date-mark.ts';
import type { CalendarDate } from '../../src/kitchen/time/zone.ts';

const day = (text: string): CalendarDate => text as CalendarDate;

// FDA Food Code 2022 (model) 3-501.17(A): the day of preparation is day 1, seven days at 41 °F or below.
test.each([
  ['2026-10-01', '2026-10-07'],
  // County environmental health text on 3-501.17: opened or made April 1, discard by April 7.
  ['2026-04-01', '2026-04-07'],
  // Crosses a month and a clock change: calendar days, not 168 hours.
  ['2026-10-28', '2026-11-03'],
  ['2028-02-26', '2028-03-03'],
  ['2027-02-26', '2027-03-04'],
  // Conference for Food Protection 2016 issue I-034: made at 11 pm on 1 January, gone by the end of 7 January.
  ['2026-01-01', '2026-01-07'],
])('made %s, last day %s', (made, last) => {
  expect(lastDay(day(made), 7, [])).toBe(last);
});

// Food Code 3-501.17(C): a combined food keeps the mark of its earliest ingredient.
test('overnight oats of November 10 with quinoa made November 7 are good through November 13', () => {
  expect(lastDay(day('2026-11-10'), 7, [lastDay(day('2026-11-07'), 7, [])])).toBe('2026-11-13');
});

// Food Code 3-501.17(B)(2): not past the maker's own safety date.
test('a tub opened November 2 with a use-by of November 5 ends on November 5', () => {
  expect(lastDay(day('2026-11-02'), 7, [day('2026-11-05')])).toBe('2026-11-05');
});

// Food Code 3-501.18(A)(1): frozen time is not counted and does not reset.
test('made March 2, frozen at close on March 3, thawed from March 20: last day March 24', () => {
  const left = daysLeftAt(day('2026-03-03'), lastDay(day('2026-03-02'), 7, []));
  expect(lastDayThawed(day('2026-03-20'), day('2026-03-03'), left)).toBe('2026-03-24');
});
