import ICAL from 'ical.js';
import { Problem } from '../../../nutrition/problem.ts';
import type { Block } from './blocks.ts';
import { cleanLine, lineName } from './clean-line.ts';
import type { CalendarLine } from './lines.ts';
import { type Stamp, stampsOf } from './moment.ts';

/** One VEVENT as the parser read it. */
export interface ReadEvent {
  readonly line: number;
  readonly uid: string;
  readonly recurrence?: Stamp;
  /** RANGE=THISANDFUTURE: meant for all later ones too. */
  readonly andFuture: boolean;
  readonly start: Stamp;
  readonly end?: Stamp;
  readonly durationSec?: number;
  readonly rule?: ICAL.Recur;
  readonly extra: readonly Stamp[];
  readonly except: readonly Stamp[];
  readonly summary: string;
  readonly location?: string;
  readonly description: string;
  readonly categories: string;
  readonly isCancelled: boolean;
  readonly sequence: number;
  readonly stampMs?: number;
  /** Lines that had to be repaired to be read. */
  readonly repaired: readonly number[];
}

const WANTED = new Set([
  'UID',
  'DTSTART',
  'DTEND',
  'DURATION',
  'RRULE',
  'RDATE',
  'EXDATE',
  'RECURRENCE-ID',
  'SUMMARY',
  'LOCATION',
  'DESCRIPTION',
  'CATEGORIES',
  'STATUS',
  'SEQUENCE',
  'DTSTAMP',
  'LAST-MODIFIED',
]);

/** Without these an event would be another game than its writer meant. */
const ESSENTIAL = new Set(['DTSTART', 'RRULE', 'RECURRENCE-ID', 'UID', 'EXDATE', 'RDATE']);

/**
 * Reads one event. A line that the parser refuses is read again without its parameters; one that still fails is left
 * out, unless the game would be wrong without it.
 * @throws Problem `bad_file` that says which property is broken.
 */
export function readEvent(block: Block): ReadEvent {
  const repaired: number[] = [];
  const properties: ICAL.Property[] = [];
  for (const content of block.lines) {
    if (!WANTED.has(lineName(content.text))) continue;
    const property = propertyOf(content, repaired);
    if (property) properties.push(property);
  }
  const all = (name: string) => properties.filter((property) => property.name === name);
  const one = (name: string) => all(name)[0];
  const start = stampIn(one('dtstart'), 'DTSTART');
  if (!start) throw broken('it has no DTSTART, so no day.');
  const recurrenceId = one('recurrence-id');
  const recurrence = stampIn(recurrenceId, 'RECURRENCE-ID');
  const rule = one('rrule')?.getFirstValue();
  const stamp = momentMs(one('dtstamp')) ?? momentMs(one('last-modified'));
  const end = orNothing(() => stampIn(one('dtend'), 'DTEND'));
  const durationSec = orNothing(() => secondsOf(one('duration')));
  const summary = textOf(one('summary'));
  return {
    line: block.line,
    uid: textOf(one('uid')),
    ...(recurrence ? { recurrence } : {}),
    andFuture: recurrenceId?.getParameter('range') !== undefined,
    start,
    ...(end ? { end } : {}),
    ...(durationSec === undefined ? {} : { durationSec }),
    ...(rule instanceof ICAL.Recur ? { rule } : {}),
    extra: all('rdate').flatMap((property) => stampsIn(property, 'RDATE')),
    except: all('exdate').flatMap((property) => stampsIn(property, 'EXDATE')),
    summary,
    ...(one('location') ? { location: textOf(one('location')) } : {}),
    description: textOf(one('description')),
    categories: all('categories')
      .flatMap((property) => property.getValues().map(String))
      .join(', '),
    isCancelled: /^cancell?ed$/i.test(textOf(one('status'))),
    sequence: wholeNumber(textOf(one('sequence'))),
    ...(stamp === undefined ? {} : { stampMs: stamp }),
    repaired,
  };
}

function propertyOf({ text, line }: CalendarLine, repaired: number[]): ICAL.Property | undefined {
  const clean = cleanLine(text);
  try {
    return parsed(clean);
  } catch {
    const name = lineName(clean);
    repaired.push(line);
    try {
      return parsed(`${name}:${valuePart(clean)}`);
    } catch {
      if (ESSENTIAL.has(name)) throw broken(`its ${name} (line ${line}) cannot be read.`);
      return undefined;
    }
  }
}

function parsed(line: string): ICAL.Property {
  const property = new ICAL.Property(ICAL.parse.property(line) as unknown as string[]);
  if (property.name === 'rrule') property.getFirstValue();
  return property;
}

/** What follows the first colon that does not belong to an address, without stray quotes. */
function valuePart(line: string): string {
  const at = line.search(/:(?!\/\/)/);
  return (at < 0 ? line : line.slice(at + 1)).replace(/^["']+|["']+$/g, '');
}

function stampIn(property: ICAL.Property | undefined, name: string): Stamp | undefined {
  return property && stampsIn(property, name)[0];
}

function stampsIn(property: ICAL.Property, name: string): Stamp[] {
  try {
    return stampsOf(property);
  } catch {
    throw broken(`its ${name} is not a date.`);
  }
}

const textOf = (property: ICAL.Property | undefined): string => {
  const value = property?.getFirstValue();
  return value === undefined || value === null ? '' : String(value).trim();
};

const wholeNumber = (text: string): number => (/^\d{1,9}$/.test(text) ? Number(text) : 0);

/** DTSTAMP is in UTC (RFC 5545 §3.8.7.2); to the second, since it says which of two versions is later. */
function momentMs(property: ICAL.Property | undefined): number | undefined {
  const written = property?.toJSON() as unknown as readonly unknown[] | undefined;
  const ms = Date.parse(`${String(written?.[3] ?? '').replace(/Z$/, '')}Z`);
  return Number.isNaN(ms) ? undefined : ms;
}

function secondsOf(property: ICAL.Property | undefined): number | undefined {
  const value = property?.getFirstValue();
  return value instanceof ICAL.Duration ? value.toSeconds() : undefined;
}

/** For what a game can do without: its end. */
function orNothing<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch {
    return undefined;
  }
}

const broken = (message: string): Problem =>
  new Problem('bad_file', message, 'The other games were read. Mend this event, or type the game.');
