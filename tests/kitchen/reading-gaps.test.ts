import { expect, test } from 'vitest';
import type { LoggedReading } from '../../src/kitchen/stock/ledger.ts';
import { readingGaps } from '../../src/kitchen/stock/reading-gaps.ts';
import { at, book } from '../helpers/stock-kitchen.ts';

// The demo kitchen reads at 06:45 and 14:00.
const reading = (wall: string, location = 'fridge_a'): LoggedReading => ({
  eventId: wall,
  who: 'IN-01',
  location,
  atMs: at(wall),
  tempF: 38,
});
const gaps = (
  readings: readonly LoggedReading[],
  now: string,
  inUse = new Map(readings.map(({ location, atMs }) => [location, atMs] as const).reverse()),
): string[] =>
  readingGaps(book, readings, inUse, at('2026-10-20 00:00'), at(now)).map(
    (gap) => `${gap.location} ${gap.date} ${gap.time}`,
  );

test('a reading near its time counts for it, an hour late too', () => {
  expect(gaps([reading('2026-10-26 06:50'), reading('2026-10-26 15:00')], '2026-10-27 06:00')).toEqual([]);
});

test('a time is missed once the middle to the next has passed, not before', () => {
  const logged = [reading('2026-10-26 06:50')];
  expect(gaps(logged, '2026-10-26 20:00')).toEqual([]);
  expect(gaps(logged, '2026-10-27 00:00')).toEqual(['fridge_a 2026-10-26 14:00']);
  expect(gaps(logged, '2026-10-27 10:21')).toEqual(['fridge_a 2026-10-26 14:00']);
  expect(gaps(logged, '2026-10-27 10:23')).toEqual([
    'fridge_a 2026-10-26 14:00',
    'fridge_a 2026-10-27 06:45',
  ]);
});

test('what was before the first reading of a place is no gap, and a place nobody reads is not told', () => {
  expect(gaps([reading('2026-10-26 14:05')], '2026-10-26 15:00')).toEqual([]);
});

test('the day the clocks go back has its two readings', () => {
  const logged = [reading('2026-10-31 06:45'), reading('2026-10-31 14:00')];
  expect(gaps(logged, '2026-11-02 00:00')).toEqual([
    'fridge_a 2026-11-01 06:45',
    'fridge_a 2026-11-01 14:00',
  ]);
});

test('a place read before, or with food in it, is missed though nobody read it in this time', () => {
  const inUse = new Map([
    ['fridge_a', at('2026-10-01 07:00')],
    ['fridge_b', at('2026-10-20 15:00')],
  ]);
  expect(gaps([], '2026-10-21 00:00', inUse)).toEqual([
    'fridge_a 2026-10-20 06:45',
    'fridge_a 2026-10-20 14:00',
    'fridge_b 2026-10-20 14:00',
  ]);
});
