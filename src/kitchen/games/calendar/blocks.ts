import { Problem } from '../../../nutrition/problem.ts';
import { MOST_EVENTS } from './limits.ts';
import type { CalendarLine } from './lines.ts';
import type { CalendarProblem } from './reading.ts';

/** The lines of one event or zone, without what is nested in it. */
export interface Block {
  readonly kind: 'VEVENT' | 'VTIMEZONE';
  readonly line: number;
  readonly lines: readonly CalendarLine[];
}

export interface Blocks {
  readonly header: readonly CalendarLine[];
  readonly blocks: readonly Block[];
  readonly problems: readonly CalendarProblem[];
  /** Lines inside events that are no calendar lines, such as stray HTML. */
  readonly strayLines: readonly number[];
  /** False when the file breaks off: what it does not hold may still be on. */
  readonly complete: boolean;
}

const CONTENT_LINE = /^[A-Za-z][A-Za-z0-9-]*"?\s*[;:]/;

/**
 * Cuts a calendar into its events and zones, so that a broken one leaves the others alone. What each holds is read
 * later, by the parser. Alarms and other nested parts are left out.
 * @throws Problem `bad_file` when there are too many events.
 */
export function cutIntoBlocks(lines: readonly CalendarLine[]): Blocks {
  const header: CalendarLine[] = [];
  const blocks: Block[] = [];
  const problems: CalendarProblem[] = [];
  const strayLines: number[] = [];
  let open: { kind: Block['kind']; line: number; lines: CalendarLine[]; depth: number } | undefined;
  let ended = false;
  let events = 0;
  for (const content of lines) {
    const edge = /^(BEGIN|END)\s*:\s*([A-Za-z-]+)/i.exec(content.text);
    const side = edge?.[1]?.toUpperCase();
    const name = edge?.[2]?.toUpperCase();
    if (side === 'BEGIN' && (name === 'VEVENT' || (name === 'VTIMEZONE' && !open))) {
      if (open) problems.push(notEnded(open.line));
      if (name === 'VEVENT' && ++events > MOST_EVENTS) throw tooMany();
      open = { kind: name, line: content.line, lines: [], depth: 0 };
    } else if (side === 'END' && name === 'VCALENDAR') {
      if (open) problems.push(notEnded(open.line));
      open = undefined;
      ended = true;
    } else if (!open) {
      if (!edge && CONTENT_LINE.test(content.text)) header.push(content);
    } else if (side === 'END' && name === open.kind) {
      blocks.push({ kind: open.kind, line: open.line, lines: open.lines });
      open = undefined;
    } else if (open.kind === 'VTIMEZONE') {
      if (CONTENT_LINE.test(content.text)) open.lines.push(content);
    } else if (edge) {
      open.depth = Math.max(0, open.depth + (side === 'BEGIN' ? 1 : -1));
    } else if (!CONTENT_LINE.test(content.text)) {
      strayLines.push(content.line);
    } else if (open.depth === 0) {
      open.lines.push(content);
    }
  }
  if (open) problems.push(notEnded(open.line));
  else if (!ended) problems.push(brokenOff(lines.at(-1)?.line ?? 1));
  return { header, blocks, problems, strayLines, complete: ended && problems.length === 0 };
}

const notEnded = (line: number): CalendarProblem => ({
  line,
  message: 'This event begins but does not end; it was left out.',
  hint: 'Export the calendar again, or type the game.',
});

const brokenOff = (line: number): CalendarProblem => ({
  line,
  message: 'The file breaks off here: END:VCALENDAR is missing.',
  hint: 'Games after this point may be missing. Export or download it again.',
});

function tooMany(): Problem {
  return new Problem(
    'bad_file',
    `This calendar has more than ${MOST_EVENTS.toLocaleString('en-US')} events.`,
    'Export one season or one sport at a time.',
  );
}
