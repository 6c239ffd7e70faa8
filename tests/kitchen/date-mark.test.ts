import { expect, test } from 'vitest';
import { daysLeftAt, lastDay, lastDayThawed } from '../../src/kitchen/stock/date-mark.ts';
import type { CalendarDate } from '../../src/kitchen/time/zone.ts';

const day = (text: string): CalendarDate => text as CalendarDate;

test('a kitchen may keep food fewer days than the model code, never more', () => {
  expect(lastDay(day('2026-11-02'), 3, [])).toBe('2026-11-04');
  expect(lastDay(day('2026-11-02'), 30, [])).toBe('2026-11-08');
});

test('food frozen and thawed on one day loses no day twice', () => {
  const useBy = lastDay(day('2026-03-02'), 7, []);
  const left = daysLeftAt(day('2026-03-03'), useBy);
  expect(lastDayThawed(day('2026-03-03'), day('2026-03-03'), left)).toBe(useBy);
});

test('food frozen on its last day must be eaten on no later day: it is past its date when thawed', () => {
  const left = daysLeftAt(day('2026-03-08'), day('2026-03-08'));
  expect(left).toBe(0);
  expect(lastDayThawed(day('2026-03-20'), day('2026-03-08'), left)).toBe('2026-03-19');
});
