import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { dailyReminders } from '../../src/kitchen/reminders/planner/daily.ts';
import { occurrence } from '../../src/kitchen/reminders/planner/rules.ts';
import type { ReminderRule } from '../../src/kitchen/reminders/reminder.ts';
import { calendarDate, clockTime } from '../../src/kitchen/time/zone.ts';
import type { Database } from '../../src/store/database.ts';
import { reminderBooksIn } from '../../src/store/reminders/book.ts';
import { reminderQueuesIn } from '../../src/store/reminders/queue.ts';
import { freshDatabase } from '../helpers/database.ts';
import { book } from '../helpers/reminder-kitchen.ts';
import { byTheRule, CHANGES, QUARTER_MS } from './clock-changes.ts';

/**
 * Reminders at wall times, every quarter hour of the two days around each clock change of 2026 to 2028. What is right is
 * worked out from the tz database's transitions by RFC 5545 §3.3.5 (see `clock-changes.ts`), not by our resolver. CI runs
 * this file under two process zones.
 */
const HOUR_MS = 3_600_000;
const iso = (ms: number): string => new Date(ms).toISOString().slice(0, 16);

const rule = (time: string): ReminderRule => ({
  id: `at-${time}`,
  task: 'order milk',
  weekdays: [1, 2, 3, 4, 5, 6, 7],
  time: clockTime(time),
  audience: 'kitchen',
  madeBy: 'IN-01',
});

function wallsAround(changeMs: number): readonly { wallMs: number; date: string; time: string }[] {
  return Array.from({ length: 193 }, (_, n) => {
    const wallMs = changeMs - 24 * HOUR_MS + n * QUARTER_MS;
    const [date = '', time = ''] = iso(wallMs).split('T');
    return { wallMs, date, time };
  });
}

describe('a repeated reminder', () => {
  test.each(CHANGES)('%s at %s: due when the wall clock says so', (zone, change, before, after) => {
    const changeMs = Date.parse(`${change}Z`);
    for (const { wallMs, date, time } of wallsAround(changeMs)) {
      const { dueMs, key, wall } = occurrence(rule(time), calendarDate(date), zone);
      expect(iso(dueMs), `${date} ${time} ${zone}`).toBe(iso(byTheRule(wallMs, changeMs, before, after)));
      expect(key).toBe(`own:at-${time}:${date}T${time}`);
      expect(wall).toEqual({ date, time, zone });
    }
  });
});

describe('the kitchen’s own hours', () => {
  test.each(CHANGES)('%s at %s: one stock check a day, at its hour', (zone, change, before, after) => {
    const changeMs = Date.parse(`${change}Z`);
    for (const time of ['00:15', '01:30', '02:00', '02:30', '08:00']) {
      const settings = { ...book.settings, timeZone: zone, stockCheckTime: time };
      const checks = dailyReminders(settings, changeMs - 60 * HOUR_MS).filter(
        ({ kind }) => kind === 'stock_check',
      );
      expect(new Set(checks.map(({ key }) => key)).size).toBe(checks.length);
      for (const { dueMs, about } of checks.slice(0, 5)) {
        const wallMs = Date.parse(`${about.date}T${time}Z`);
        expect(iso(dueMs), `${about.date} ${time}`).toBe(iso(byTheRule(wallMs, changeMs, before, after)));
      }
    }
  });
});

describe('through the store', () => {
  let database: Database;
  beforeAll(async () => {
    database = await freshDatabase();
  });
  afterAll(async () => {
    await database.close();
  });

  test.each(CHANGES.filter(([, change]) => change.startsWith('2026')))(
    '%s at %s: each is claimed at its instant, and not a minute before',
    async (...row) => {
      const [zone, change, before, after] = row;
      const changeMs = Date.parse(`${change}Z`);
      const workspace = `${zone} ${change}`;
      const walls = wallsAround(changeMs).filter((_, n) => n % 3 === 0);
      const wanted = walls.map(({ date, time }) => occurrence(rule(time), calendarDate(date), zone));
      await reminderBooksIn(database)(workspace).plan(wanted, changeMs - 72 * HOUR_MS);
      const queue = reminderQueuesIn(database)(workspace);
      const told = new Map<string, number>();
      const dueAt = [...new Set(wanted.map(({ dueMs }) => dueMs))].sort((a, b) => a - b);
      for (const dueMs of dueAt) {
        for (const nowMs of [dueMs - 60_000, dueMs]) {
          const claimed = await queue.claimDue({ by: 'sweep', nowMs, leaseMs: HOUR_MS * 99, most: 99 });
          for (const { key } of claimed) told.set(key, nowMs);
        }
      }
      expect(told.size).toBe(wanted.length);
      for (const { wallMs, date, time } of walls) {
        const dueMs = byTheRule(wallMs, changeMs, before, after);
        expect(iso(told.get(`own:at-${time}:${date}T${time}`) ?? 0), `${date} ${time}`).toBe(iso(dueMs));
      }
    },
  );
});
