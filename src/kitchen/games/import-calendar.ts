import { createHash } from 'node:crypto';
import type { KitchenSettings } from '../../nutrition/book.ts';
import { Problem } from '../../nutrition/problem.ts';
import type { NewReminder } from '../reminders/reminder-book.ts';
import { type CalendarDate, dateOf } from '../time/zone.ts';
import type { FetchCalendar } from './calendar/reach.ts';
import { readCalendar } from './calendar/read-calendar.ts';
import type { CalendarProblem, CalendarReading } from './calendar/reading.ts';
import type { CalendarRead, CalendarSource, Game, GameBook } from './game.ts';
import { type ChangedGame, type GameChange, type MergedGames, mergeGames } from './merge-games.ts';
import { partOwn, readBack } from './read-back.ts';
import { ReadMeanwhile } from './read-meanwhile.ts';

/** A calendar behind an address is read again this often, also after it failed. */
const READ_AGAIN_MS = 60 * 60_000;
/** Somebody else may read the same calendar at the same moment; more often in a row hardly. */
const MOST_ATTEMPTS = 5;
const LAST_DATE = '9999-12-31' as CalendarDate;

export interface ImportDesk {
  readonly games: GameBook;
  readonly settings: KitchenSettings;
  readonly nowMs: number;
  /** Writes a reading where somebody asked for it; absent when the kitchen reads by itself. */
  readonly keep?: KeepReading;
}

/** @throws ReadMeanwhile when the calendar was read since `before` was looked up. */
export type KeepReading = (
  desk: ImportDesk,
  read: CalendarRead,
  before: CalendarSource | undefined,
) => Promise<void>;

/** What people are told of a reading, if anything; it is written together with what was read. */
export type ToldOfReading = (
  read: Pick<ReadAgain, 'calendar' | 'newProblem'> & {
    readonly result?: Pick<MergedGames, 'changes' | 'newlyMissing'>;
  },
) => NewReminder | undefined;

const nothing: ToldOfReading = () => undefined;

export interface ImportResult {
  readonly calendar: CalendarSource;
  /** Every game the calendar tells of, as the kitchen keeps it. */
  readonly games: readonly Game[];
  readonly changes: readonly ChangedGame[];
  readonly counts: Readonly<Record<GameChange | 'unchanged', number>>;
  readonly missing: readonly Game[];
  readonly problems: readonly CalendarProblem[];
  readonly notes: readonly string[];
}

/** Where the bytes come from: the name of a file, or an address with the etag it answered. */
export type ImportFrom = { readonly file: string } | { readonly url: string; readonly etag?: string };

/**
 * Reads a calendar into the kitchen's games; the same file or address again updates them. Games are written all or none.
 * @throws Problem `bad_file` when it is no calendar.
 */
export async function importCalendar(
  desk: ImportDesk,
  bytes: Uint8Array,
  from: ImportFrom,
  told: ToldOfReading = nothing,
): Promise<ImportResult> {
  const { settings, nowMs } = desk;
  const source = 'file' in from ? from.file : from.url;
  const reading = readCalendar(bytes, { source, timeZone: settings.timeZone, team: settings.name, nowMs });
  for (let attempt = 1; ; attempt++) {
    try {
      return await merged(desk, reading, from, told);
    } catch (error) {
      if (!(error instanceof ReadMeanwhile) || attempt === MOST_ATTEMPTS) throw error;
    }
  }
}

/** Lays a reading over what is kept now and writes it, unless somebody else read the calendar meanwhile. */
async function merged(
  desk: ImportDesk,
  reading: CalendarReading,
  from: ImportFrom,
  told: ToldOfReading,
): Promise<ImportResult> {
  const { games: book, settings, nowMs } = desk;
  const id = calendarId(from);
  const before = (await book.calendars()).find((each) => each.id === id);
  const calendar = calendarRead(reading, from, before, nowMs);
  const known = await book.ofCalendar(id);
  const today = dateOf(nowMs, settings.timeZone);
  const typed = (await book.between(today, LAST_DATE)).filter(({ calendarId: from }) => from === undefined);
  const { others, own } = await partOwn(reading.games, book);
  const laid = mergeGames(id, known, { ...reading, games: others }, nowMs, today, typed);
  const { missing, newlyMissing } = laid;
  const back = own.flatMap(({ game, told }) => readBack(game, told, nowMs) ?? []);
  const changes = [...laid.changes, ...back];
  const unchanged = laid.unchanged + own.length - back.length;
  const put = [...laid.put, ...back.map(({ game }) => game)];
  const twins = changes.filter(({ kind, before }) => kind === 'added' && before).length;
  const news = told({ calendar, result: { changes, newlyMissing } });
  await (desk.keep ?? keepUnsaid)(desk, { calendar, games: put, ...(news ? { news } : {}) }, before);
  return {
    calendar,
    games: [...(await book.ofCalendar(id)), ...own.map(({ game }) => game)],
    changes,
    counts: countsOf(changes, unchanged),
    missing,
    problems: reading.problems,
    notes: twins > 0 ? [twinNote(twins), ...reading.notes] : reading.notes,
  };
}

const keepUnsaid: KeepReading = ({ games, nowMs }, read) => games.putRead(read, nowMs);

function calendarRead(
  { name, problems: [problem] }: CalendarReading,
  from: ImportFrom,
  before: CalendarSource | undefined,
  nowMs: number,
): CalendarSource {
  const source = 'file' in from ? from.file : from.url;
  return {
    id: calendarId(from),
    name: name ?? source.replace(/.*[/\\]/, '').slice(0, 100),
    readMs: nowMs,
    reads: (before?.reads ?? 0) + 1,
    ...('url' in from
      ? {
          url: from.url,
          nextReadMs: nowMs + READ_AGAIN_MS,
          ...(from.etag === undefined ? {} : { etag: from.etag }),
        }
      : {}),
    ...(problem ? { problem: `line ${problem.line}: ${problem.message}` } : {}),
  };
}

const twinNote = (count: number): string =>
  `${count} ${count === 1 ? 'game was' : 'games were'} typed before: same day, same opponent, so kept as one with the calendar's.`;

function calendarId(from: ImportFrom): string {
  const name = 'file' in from ? from.file.replace(/.*[/\\]/, '').toLowerCase() : from.url;
  return createHash('sha256').update(name).digest('hex').slice(0, 16);
}

function countsOf(changes: readonly ChangedGame[], unchanged: number): ImportResult['counts'] {
  const counts = { added: 0, moved: 0, cancelled: 0, restored: 0, changed: 0, unchanged };
  for (const { kind } of changes) counts[kind] += 1;
  return counts;
}

/** "webcal://" is how calendar programs write an address to subscribe to; it is fetched by https. */
export const plainAddress = (url: string): string => url.trim().replace(/^webcals?:\/\//i, 'https://');

/** Fetches and imports an address; `undefined` when it has not changed since last time. */
export async function importAddress(
  desk: ImportDesk,
  fetchCalendar: FetchCalendar,
  address: string,
  told: ToldOfReading = nothing,
): Promise<ImportResult | undefined> {
  const url = plainAddress(address);
  const id = calendarId({ url });
  const before = (await desk.games.calendars()).find((calendar) => calendar.id === id);
  const fetched = await fetchCalendar(url, before?.problem === undefined ? before?.etag : undefined);
  if (fetched.kind === 'unchanged' && before) {
    await ifFirst(() =>
      desk.games.putCalendar({
        ...before,
        readMs: desk.nowMs,
        nextReadMs: desk.nowMs + READ_AGAIN_MS,
        reads: (before.reads ?? 0) + 1,
      }),
    );
    return undefined;
  }
  if (fetched.kind === 'unchanged') {
    throw new Problem('unavailable', 'The address sent nothing to read.', 'Try again in a few minutes.');
  }
  const { bytes, etag } = fetched;
  return importCalendar(desk, bytes, { url, ...(etag === undefined ? {} : { etag }) }, told);
}

/** Of several that read one calendar at once, only the first has something to write. */
async function ifFirst(write: () => Promise<void>): Promise<void> {
  try {
    await write();
  } catch (error) {
    if (!(error instanceof ReadMeanwhile)) throw error;
  }
}

export interface ReadAgain {
  readonly calendar: CalendarSource;
  /** Absent when nothing changed or it failed. */
  readonly result?: ImportResult;
  /** Told only when it was well before, so that a feed that is down does not nag every hour. */
  readonly newProblem?: string;
}

/** Reads again every calendar whose time has come. One that fails keeps its games and is tried again in an hour. */
export async function readDueCalendars(
  desk: ImportDesk,
  fetchCalendar: FetchCalendar,
  told: ToldOfReading = nothing,
): Promise<readonly ReadAgain[]> {
  const { games, nowMs } = desk;
  const due = (await games.calendars()).filter(
    ({ url, nextReadMs }) => url !== undefined && nextReadMs !== undefined && nextReadMs <= nowMs,
  );
  const read: ReadAgain[] = [];
  for (const calendar of due) {
    try {
      const result = await importAddress(desk, fetchCalendar, calendar.url ?? '', told);
      read.push({ calendar, ...(result ? { result } : {}) });
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      const failure = {
        calendar,
        ...(calendar.problem === error.message ? {} : { newProblem: error.message }),
      };
      const failed = {
        ...calendar,
        problem: error.message,
        nextReadMs: nowMs + READ_AGAIN_MS,
        reads: (calendar.reads ?? 0) + 1,
      };
      const news = told({ ...failure, calendar: failed });
      await ifFirst(() => games.putRead({ calendar: failed, games: [], ...(news ? { news } : {}) }, nowMs));
      read.push(failure);
    }
  }
  return read;
}
