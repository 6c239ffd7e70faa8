import { type CalendarDate, weekdayOf } from '../../time/zone.ts';
import type { ReminderRule } from '../reminder.ts';
import type { NewReminder } from '../reminder-book.ts';
import { atWall, datesAhead, HOUR_MS } from './horizon.ts';

/** A person's own reminder by the clock helps for half a day: common practice, no source. */
export const OWN_HELPS_MS = 12 * HOUR_MS;

/** The occurrences of people's repeated reminders in the days to come. */
export function ruleReminders(
  rules: readonly ReminderRule[],
  nowMs: number,
  zone: string,
): readonly NewReminder[] {
  return rules
    .flatMap((rule) =>
      datesAhead(nowMs, zone)
        .filter((date) => rule.weekdays.includes(weekdayOf(date)))
        .map((date) => occurrence(rule, date, zone)),
    )
    .filter((reminder) => reminder.dueMs >= nowMs);
}

/** One occurrence of a rule, named by the wall time it was planned for. */
export function occurrence(rule: ReminderRule, date: CalendarDate, zone: string): NewReminder {
  const at = atWall(date, rule.time, zone);
  return {
    key: `own:${rule.id}:${date}T${rule.time}`,
    kind: 'own',
    audience: rule.audience,
    ...at,
    helpsUntilMs: at.dueMs + OWN_HELPS_MS,
    about: { task: rule.task, by: rule.madeBy, rule: rule.id },
    planned: true,
  };
}
