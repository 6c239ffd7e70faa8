import { readFileSync } from 'node:fs';
import { readCalendar } from '../../src/kitchen/games/calendar/read-calendar.ts';
import type { CalendarContext, CalendarReading, ToldGame } from '../../src/kitchen/games/calendar/reading.ts';

export const CONTEXT: CalendarContext = {
  source: 'schedule.ics',
  timeZone: 'America/Chicago',
  team: 'Alder Point Herons',
  nowMs: Date.parse('2026-11-25T15:00:00Z'),
};

/** A calendar of tests/kitchen/calendars, byte for byte. */
export const calendarFile = (name: string): Buffer =>
  readFileSync(new URL(`../kitchen/calendars/${name}.ics`, import.meta.url));

export const readFile = (name: string, context: Partial<CalendarContext> = {}): CalendarReading =>
  readCalendar(calendarFile(name), { ...CONTEXT, ...context });

/** A calendar of events given as lists of lines. */
export function calendarOf(events: readonly (readonly string[])[], header: readonly string[] = []): Buffer {
  const lines = events.flatMap((event) => ['BEGIN:VEVENT', ...event, 'END:VEVENT']);
  return Buffer.from(
    ['BEGIN:VCALENDAR', 'VERSION:2.0', ...header, ...lines, 'END:VCALENDAR', ''].join('\r\n'),
  );
}

export const readEvents = (
  events: readonly (readonly string[])[],
  context: Partial<CalendarContext> = {},
): CalendarReading => readCalendar(calendarOf(events), { ...CONTEXT, ...context });

/** "2026-12-05 14:00 America/Chicago", or without the time. */
export const whenOf = ({ date, time, timeZone }: ToldGame): string =>
  [date, time, timeZone].filter((part) => part !== undefined).join(' ');
