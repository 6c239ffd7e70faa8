import type { KitchenSettings } from '../../../nutrition/book.ts';
import {
  addDays,
  type CalendarDate,
  type ClockTime,
  clockTime,
  instantOf,
  weekdayOf,
} from '../../time/zone.ts';
import type { NewReminder } from '../reminder-book.ts';
import { atWall, datesAhead, endOfDay } from './horizon.ts';

const SUNDAY = 7;
/** When the week is summed up: common practice, no source. */
const WEEK_TIME = '18:00' as ClockTime;

/** What comes every day or week by the kitchen's clock: the stock check, readings, the week in figures. */
export function dailyReminders(settings: KitchenSettings, nowMs: number): readonly NewReminder[] {
  const { timeZone } = settings;
  return datesAhead(nowMs, timeZone)
    .flatMap((date) => [
      stockCheck(date, settings),
      ...readings(date, settings),
      ...(weekdayOf(date) === SUNDAY ? [week(date, settings)] : []),
    ])
    .filter((reminder) => reminder.dueMs >= nowMs);
}

function stockCheck(date: CalendarDate, { stockCheckTime, timeZone }: KitchenSettings): NewReminder {
  return {
    key: `stock_check:${date}`,
    kind: 'stock_check',
    audience: 'kitchen',
    ...atWall(date, clockTime(stockCheckTime), timeZone),
    helpsUntilMs: endOfDay(date, timeZone),
    about: { date },
    planned: true,
  };
}

/** A reading asked for late is still worth taking until the next one is due. */
function readings(date: CalendarDate, { readingTimes, timeZone }: KitchenSettings): NewReminder[] {
  const times = [...readingTimes].sort().map(clockTime);
  return times.map((time, at) => {
    const next = times[at + 1];
    const until =
      next === undefined
        ? instantOf({ date: addDays(date, 1), time: times[0] ?? time }, timeZone)
        : instantOf({ date, time: next }, timeZone);
    return {
      key: `reading:${date}T${time}`,
      kind: 'reading',
      audience: 'kitchen',
      ...atWall(date, time, timeZone),
      helpsUntilMs: until,
      about: { date, time },
      planned: true,
    };
  });
}

function week(date: CalendarDate, { timeZone }: KitchenSettings): NewReminder {
  return {
    key: `week:${date}`,
    kind: 'week',
    audience: 'kitchen',
    ...atWall(date, WEEK_TIME, timeZone),
    helpsUntilMs: endOfDay(addDays(date, 1), timeZone),
    about: { from: addDays(date, -6), to: date },
    planned: true,
  };
}
