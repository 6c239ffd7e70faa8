import { expect, test } from 'vitest';
import { recordMoved, TIME_AS_CONTROL_MS } from '../../src/kitchen/stock/record-moved.ts';
import { COLD_LIMIT_F, fahrenheitOf, HOT_LIMIT_F } from '../../src/kitchen/stock/temperature.ts';
import { COOLING_FROM_ROOM_MIN, judgeCooling, judgePower } from '../../src/kitchen/stock/warm-rules.ts';
import { calendarDate, clockTime, instantOf, sayInstant } from '../../src/kitchen/time/zone.ts';
import { at, stockRoom, zone } from '../helpers/stock-kitchen.ts';

/** When pieces made that morning and taken out at `wall` must be thrown out. */
async function discardAt(wall: string, consumer?: { airTempF?: number }): Promise<number | undefined> {
  const room = await stockRoom();
  try {
    await room.make(`${wall.slice(0, 10)} 06:00`, 12);
    const { to } = await recordMoved(room.desk(wall), {
      who: 'IN-01',
      atMs: at(wall),
      which: {},
      pieces: 12,
      to: 'out',
      ...(consumer ? { consumer } : {}),
    });
    return to[0]?.discardAtMs;
  } finally {
    await room.database.close();
  }
}

// FDA Food Code 2022 (model) 3-501.16(A)(1) and (2).
test('cold is held at 41 °F (5 °C) or below, hot at 135 °F (57 °C) or above', () => {
  expect(fahrenheitOf(5)).toBe(COLD_LIMIT_F);
  expect(Math.round(((HOT_LIMIT_F - 32) * 5) / 9)).toBe(57);
});

// FDA Food Code 2022 (model) 3-501.19(B): serve or discard within 4 hours of leaving temperature control.
test('what leaves 41 °F at 10:15 is thrown out at 14:15', async () => {
  expect(await discardAt('2026-10-27 10:15')).toBe(at('2026-10-27 14:15'));
});

// 3-501.19(B) counts elapsed hours; tz database: America/Chicago falls back on 1 November 2026 at 02:00.
test('what leaves control at 23:30 CDT before the clocks go back is thrown out at 02:30 CST, not 03:30', async () => {
  const until = await discardAt('2026-10-31 23:30');
  expect(until).toBe(Date.parse('2026-11-01T08:30:00Z'));
  expect(sayInstant(until ?? 0, zone)).toBe('Sun Nov 1, 2:30 am CST');
});

// USDA FSIS and FDA, advice to consumers ("2-hour rule"; 1 hour above 90 °F).
test('a tailgate tray goes after 2 hours, after 1 hour above 90 °F: 75 minutes at 93 °F is too long', async () => {
  expect(await discardAt('2026-10-27 12:00', {})).toBe(at('2026-10-27 14:00'));
  expect(await discardAt('2026-10-27 12:00', { airTempF: 90 })).toBe(at('2026-10-27 14:00'));
  const hot = await discardAt('2026-10-27 12:00', { airTempF: 93 });
  expect(hot).toBe(at('2026-10-27 13:00'));
  expect(hot ?? 0).toBeLessThan(at('2026-10-27 13:15'));
});

// FDA Food Code 2022 (model) 3-501.14(A): 135 to 70 °F within 2 hours, 135 to 41 °F within 6 hours in all.
test('135 °F at 12:00 and 70 °F at 13:00 must be 41 °F by 18:00', () => {
  const verdict = judgeCooling(70, 60);
  expect(verdict).toEqual({ state: 'on_track', untilMin: 360, toF: 41 });
  const start = instantOf({ date: calendarDate('2026-10-27'), time: clockTime('12:00') }, zone);
  expect(start + 360 * 60_000).toBe(at('2026-10-27 18:00'));
});

test('78 °F after 2 hours fails the first stage, 45 °F after 6 hours the second', () => {
  expect(judgeCooling(78, 120)).toEqual({ state: 'failed', stage: 'first' });
  expect(judgeCooling(45, 360)).toEqual({ state: 'failed', stage: 'second' });
  expect(judgeCooling(41, 360)).toEqual({ state: 'reached' });
});

// 3-501.14(B): from ingredients at room temperature to 41 °F within 4 hours.
test('a yogurt and fruit mix made at 09:00 must be 41 °F by 13:00', () => {
  expect(at('2026-10-27 09:00') + COOLING_FROM_ROOM_MIN * 60_000).toBe(at('2026-10-27 13:00'));
});

// FDA and FoodSafety.gov, food and water in an emergency: a closed refrigerator about 4 hours.
test('3 hours without power, door shut: keep and check; 5 hours and 44 °F inside: discard', () => {
  expect(judgePower(180, undefined, COLD_LIMIT_F)).toBe('within');
  expect(judgePower(180, 44, COLD_LIMIT_F)).toBe('check_each');
  expect(judgePower(300, undefined, COLD_LIMIT_F)).toBe('check_each');
  expect(judgePower(300, 44, COLD_LIMIT_F)).toBe('discard');
});

test('the clock of 3-501.19(B) is 4 elapsed hours', () => {
  expect(TIME_AS_CONTROL_MS).toBe(4 * 3_600_000);
});
