import type { CalendarReach, FetchCalendar } from './kitchen/games/calendar/reach.ts';
import { Problem } from './nutrition/problem.ts';

/** Fetching is loaded at the first address: most requests need no network. */
const fetchCalendar: FetchCalendar = async (url, etag) => {
  const { createCalendarFetch } = await import('./net/fetch-calendar.ts');
  return createCalendarFetch()(url, etag);
};

/** Only the terminal opens files of this machine: in a workspace anybody could ask for any of them. */
export const calendarReach = (isTerminal: boolean): CalendarReach =>
  isTerminal ? { fetch: fetchCalendar, file: openCalendarFile } : { fetch: fetchCalendar };

async function openCalendarFile(path: string): Promise<Uint8Array> {
  const [{ readFile, stat }, { MOST_BYTES }] = await Promise.all([
    import('node:fs/promises'),
    import('./kitchen/games/calendar/limits.ts'),
  ]);
  try {
    const { size } = await stat(path);
    if (size > MOST_BYTES) {
      throw new Problem(
        'bad_file',
        `${path} is ${(size / 1024 / 1024).toFixed(1)} MB; I read calendars up to ${MOST_BYTES / 1024 / 1024} MB.`,
        'Export one season or one sport at a time.',
      );
    }
    return await readFile(path);
  } catch (error) {
    if (error instanceof Problem) throw error;
    const { code } = error as NodeJS.ErrnoException;
    throw new Problem(
      code === 'ENOENT' ? 'not_found' : 'bad_file',
      code === 'ENOENT' ? `There is no file ${path} here.` : `${path} cannot be read.`,
      'Give the path of an .ics file from the folder you started in: import schedule.ics',
    );
  }
}
