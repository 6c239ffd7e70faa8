import type { KitchenSettings } from '../../nutrition/book.ts';
import type { NewReminder } from '../reminders/reminder-book.ts';
import { type CalendarDate, dateOf } from '../time/zone.ts';
import type { FetchCalendar } from './calendar/reach.ts';
import type { GameBook } from './game.ts';
import { readDueCalendars, type ToldOfReading } from './import-calendar.ts';
import { changeWords } from './say-change.ts';
import { sayGame } from './say-game.ts';

/** News of a day ago is old: by then the schedule itself is what people look at. */
const HELPS_MS = 24 * 3_600_000;
const MOST_TOLD = 3;

type Reading = Parameters<ToldOfReading>[0];

export interface NewsDesk {
  readonly games: GameBook;
  readonly settings: KitchenSettings;
  readonly fetchCalendar: FetchCalendar;
}

/**
 * Reads again the calendars whose time has come and has people told what changed for games to come. The news is
 * written with the games, so that neither is kept without the other, and only by whoever read the calendar first, so
 * several instances that read the same feed tell it once. Named by the reading: what changes to and fro is told each time.
 */
export async function tellCalendarNews(desk: NewsDesk, nowMs: number): Promise<number> {
  const { games, settings, fetchCalendar } = desk;
  const today = dateOf(nowMs, settings.timeZone);
  const told = new Set<string>();
  await readDueCalendars({ games, settings, nowMs }, fetchCalendar, (read) => {
    const title = newsOf(read, today);
    told.delete(read.calendar.id);
    if (title === undefined) return undefined;
    told.add(read.calendar.id);
    return newsReminder(read, title, nowMs);
  });
  return told.size;
}

function newsReminder({ calendar }: Reading, title: string, nowMs: number): NewReminder {
  return {
    key: `calendar:${calendar.id}:${calendar.reads ?? 0}:${nowMs}`,
    kind: 'calendar',
    audience: 'kitchen',
    dueMs: nowMs,
    helpsUntilMs: nowMs + HELPS_MS,
    about: { title },
    planned: false,
  };
}

/** One line for the channel, or nothing when nothing to come has changed. */
function newsOf({ calendar, result, newProblem }: Reading, today: CalendarDate): string | undefined {
  if (newProblem !== undefined) {
    return `${calendar.name} could not be read again: ${newProblem} Its games stay as they were.`;
  }
  if (!result) return undefined;
  const coming = result.changes.filter(({ game }) => game.date >= today);
  const added = coming.filter(({ kind }) => kind === 'added');
  const lines = [
    ...coming.filter(({ kind }) => kind !== 'added').map(changeWords),
    ...result.newlyMissing.map((game) => `${sayGame(game)} is no longer listed: cancel it if it is off`),
    ...(added.length === 1 && added[0] ? [`new: ${sayGame(added[0].game)}`] : []),
    ...(added.length > 1 ? [`${added.length} new games`] : []),
  ];
  if (lines.length === 0) return undefined;
  const more = lines.length > MOST_TOLD ? [`and ${lines.length - MOST_TOLD} more`] : [];
  return `${calendar.name}: ${[...lines.slice(0, MOST_TOLD), ...more].join('. ')}.`;
}
