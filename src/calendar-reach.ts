import type { CalendarReach, FetchCalendar } from './kitchen/games/calendar/reach.ts';
import { openFile } from './open-file.ts';

/** Fetching is loaded at the first address: most requests need no network. */
const fetchCalendar: FetchCalendar = async (url, etag) => {
  const { createCalendarFetch } = await import('./net/fetch-calendar.ts');
  return createCalendarFetch()(url, etag);
};

/** Only the terminal opens files of this machine: in a workspace anybody could ask for any of them. */
export const calendarReach = (isTerminal: boolean): CalendarReach =>
  isTerminal ? { fetch: fetchCalendar, file: openCalendarFile } : { fetch: fetchCalendar };

async function openCalendarFile(path: string): Promise<Uint8Array> {
  const { MOST_BYTES } = await import('./kitchen/games/calendar/limits.ts');
  return openFile(path, {
    name: 'calendars',
    mostBytes: MOST_BYTES,
    whenTooBig: 'Export one season or one sport at a time.',
    whichPath: 'Give the path of an .ics file from the folder you started in: import schedule.ics',
  });
}
