import { Problem } from '../../../nutrition/problem.ts';
import { isTimeZone } from '../../time/zone.ts';
import { isOwnWork } from '../own-entries.ts';
import { type Block, cutIntoBlocks } from './blocks.ts';
import { lineName } from './clean-line.ts';
import { gamesOfEvent, type Setting } from './games-of-event.ts';
import { DAYS_AHEAD, MOST_PROBLEMS, MOST_STEPS_A_FILE } from './limits.ts';
import { type CalendarLine, calendarLines } from './lines.ts';
import { instanceKey, type Places } from './moment.ts';
import { type ReadEvent, readEvent } from './read-event.ts';
import type { CalendarContext, CalendarProblem, CalendarReading, ToldGame } from './reading.ts';
import { latestVersions } from './versions.ts';
import { CalendarZones, ianaZone } from './zones.ts';

/**
 * Reads a calendar of games as it is found in the wild. One broken event is reported with its line and left out; the
 * others are read. What had to be assumed is said in `notes`.
 * @throws Problem `bad_file` for what is no calendar at all, or one beyond the limits.
 * @example readCalendar(bytes, { source: 'soccer.ics', timeZone: 'America/Chicago', team: 'Alder Point Herons', nowMs })
 */
export function readCalendar(bytes: Uint8Array, context: CalendarContext): CalendarReading {
  const cut = cutIntoBlocks(calendarLines(bytes));
  const problems: CalendarProblem[] = [...cut.problems];
  const zones = new CalendarZones(cut.blocks, context.timeZone);
  const name = headerValue(cut.header, 'X-WR-CALNAME');
  const own = ianaZone(headerValue(cut.header, 'X-WR-TIMEZONE') ?? '');
  const shownZone =
    own !== undefined && isTimeZone(own) && own !== 'Etc/UTC' && own !== 'UTC' ? own : context.timeZone;
  const places: Places = { zones, shownZone, kitchenZone: context.timeZone };

  const read = readEvents(cut.blocks, problems);
  const events = read.filter(({ uid }) => !isOwnWork(uid));
  const setting = {
    context,
    places,
    ...(name === undefined ? {} : { calendarName: name }),
    allCancelled: /^cancel$/i.test(headerValue(cut.header, 'METHOD') ?? ''),
    overridden: overriddenBy(events, places),
  };
  const told = tellGames(events, setting, problems);
  problems.sort((a, b) => a.line - b.line);
  return {
    ...(name === undefined ? {} : { name }),
    games: latestVersions(told.games).sort(earliestFirst),
    problems: problems.slice(0, MOST_PROBLEMS),
    notes: [
      ...told.notes,
      ...ownWorkNote(read.length - events.length),
      ...zones.notes,
      ...strayNote(cut.strayLines),
      ...repairedNote(events),
      ...(problems.length > MOST_PROBLEMS
        ? [`${problems.length - MOST_PROBLEMS} more problems like these.`]
        : []),
    ],
    complete: cut.complete && problems.length === 0,
  };
}

function readEvents(blocks: readonly Block[], problems: CalendarProblem[]): ReadEvent[] {
  const events: ReadEvent[] = [];
  for (const block of blocks) {
    if (block.kind !== 'VEVENT') continue;
    try {
      events.push(readEvent(block));
    } catch (error) {
      problems.push(problemOf(block.line, titleOf(block), error));
    }
  }
  return events;
}

interface Told {
  readonly games: readonly ToldGame[];
  readonly notes: readonly string[];
}

function tellGames(
  events: readonly ReadEvent[],
  setting: Omit<Setting, 'stepsLeft'>,
  problems: CalendarProblem[],
): Told {
  const games: ToldGame[] = [];
  const notes: string[] = [];
  const noGames: string[] = [];
  let stepsLeft = MOST_STEPS_A_FILE;
  for (const event of events) {
    try {
      const told = gamesOfEvent(event, { ...setting, stepsLeft });
      stepsLeft -= told.steps;
      games.push(...told.games);
      notes.push(...told.notes);
      if (told.isNoGame) noGames.push(event.summary);
      if (told.end === 'cut') notes.push(cutNote(event));
      if (told.end === 'gave_up') problems.push(gaveUp(event));
      if (event.andFuture) problems.push(andFuture(event));
    } catch (error) {
      problems.push(problemOf(event.line, event.summary, error));
    }
  }
  if (noGames.length > 0) notes.push(noGameNote(noGames));
  return { games, notes };
}

/** Our own problems say what is wrong; anything the parser throws means that it could not make sense of the event. */
function problemOf(line: number, title: string, error: unknown): CalendarProblem {
  const name = title === '' ? 'This event' : `"${title.slice(0, 60)}"`;
  if (error instanceof Problem)
    return { line, message: `${name} was left out: ${error.message}`, hint: error.hint };
  const reason = error instanceof Error ? error.message.slice(0, 100) : '';
  return {
    line,
    message: `${name} was left out: it cannot be read${reason === '' ? '.' : `: ${reason}`}`,
    hint: 'The other games were read. Mend this event, or type the game.',
  };
}

const titleOf = (block: Block): string =>
  block.lines
    .find(({ text }) => lineName(text) === 'SUMMARY')
    ?.text.replace(/^[^:]*:/, '')
    .trim() ?? '';

function overriddenBy(events: readonly ReadEvent[], places: Places): ReadonlySet<string> {
  const keys = new Set<string>();
  for (const { uid, recurrence } of events) {
    if (recurrence) keys.add(`${uid}\n${instanceKey(recurrence, places)}`);
  }
  return keys;
}

function headerValue(header: readonly CalendarLine[], name: string): string | undefined {
  const line = header.find(({ text }) => lineName(text) === name);
  const value = line?.text
    .slice(line.text.indexOf(':') + 1)
    .replace(/\\([,;\\])/g, '$1')
    .trim();
  return value === '' ? undefined : value?.slice(0, 100);
}

const earliestFirst = (a: ToldGame, b: ToldGame): number =>
  `${a.date} ${a.time ?? ''} ${a.uid}` < `${b.date} ${b.time ?? ''} ${b.uid}` ? -1 : 1;

const cutNote = (event: ReadEvent): string =>
  `"${event.summary}" repeats on and on; its dates of the next ${DAYS_AHEAD} days were read, no more.`;

const gaveUp = ({ line, summary }: ReadEvent): CalendarProblem => ({
  line,
  message: `The repetition of "${summary}" has too many steps, or never comes to a date; it was not read to its end.`,
  hint: 'Let it begin this season, or type the games.',
});

const andFuture = ({ line, summary }: ReadEvent): CalendarProblem => ({
  line,
  message: `"${summary}" changes this date and all later ones; only this date was changed.`,
  hint: 'Check the later dates, or type them.',
});

function noGameNote(titles: readonly string[]): string {
  const names = [...new Set(titles)];
  const shown = names.slice(0, 3).join(', ');
  return `${titles.length} left out that ${titles.length === 1 ? 'is no game' : 'are no games'}: ${shown}${names.length > 3 ? ', …' : ''}.`;
}

function ownWorkNote(count: number): string[] {
  if (count === 0) return [];
  const what =
    count === 1 ? 'entry of our own for prep or packing was' : 'entries of our own for prep and packing were';
  return [`${count} ${what} skipped: they are worked out from the games.`];
}

function strayNote(lines: readonly number[]): string[] {
  if (lines.length === 0) return [];
  const one = lines.length === 1;
  return [
    `${lines.length} ${one ? 'line that is no calendar line was' : 'lines that are no calendar lines were'} left out (line ${lines[0]}${one ? '' : ' first'}).`,
  ];
}

function repairedNote(events: readonly ReadEvent[]): string[] {
  const lines = events.flatMap(({ repaired }) => repaired);
  if (lines.length === 0) return [];
  const more = lines.length === 1 ? '' : ` and ${lines.length - 1} more`;
  return [`Line ${lines[0]}${more} had to be repaired, probably a misplaced quote: check that game.`];
}
