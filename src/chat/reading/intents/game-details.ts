import type { Slots } from '../../slots.ts';
import type { Atom, Moment } from '../atoms.ts';
import { clock } from '../lex/moments.ts';
import type { Lexed } from '../lexed.ts';
import { opponent } from '../slots/names.ts';
import { whenText } from '../slots/when.ts';

const LEAVES = /^(?:leave|leaves|leaving|depart|departs|departing|departure)$/;
/** Words that may stand between "leave" and its time. */
const BETWEEN = /^(?:at|by|is|now|campus|the|bus|from|around|moved|to|@)$/;

interface Departure {
  readonly time: string;
  readonly unsure: boolean;
  /** Atoms that belong to it, so that they are not the start of the game. */
  readonly used: ReadonlySet<Atom>;
}

/** "leave 6:30", "bus leaves at 6": when the bus goes. */
function departureIn({ seen }: Lexed): Departure | undefined {
  const at = seen.findIndex((atom) => LEAVES.test(atom.sym));
  if (at < 0) return undefined;
  for (let i = at + 1; i < seen.length && i < at + 5; i++) {
    const atom = seen[i];
    if (!atom) return undefined;
    if (atom.moment?.time !== undefined) {
      return { time: atom.moment.time, unsure: atom.moment.unsure === true, used: new Set([atom]) };
    }
    if (atom.sym === 'N') return hourIn(atom);
    if (atom.moment === undefined && !BETWEEN.test(atom.sym)) return undefined;
  }
  return undefined;
}

function hourIn(atom: Atom): Departure | undefined {
  const hour = atom.value;
  if (hour === undefined || !Number.isInteger(hour) || hour < 1 || hour > 12) return undefined;
  return { time: clock(hour, 0), unsure: true, used: new Set([atom]) };
}

/** "moved to 4", "now 6": an hour nobody called am or pm. */
function hourChangedTo(atom: Atom, i: number, seen: readonly Atom[]): Atom {
  if (atom.sym !== 'N' || !CHANGES_TO.test(seen[i - 1]?.sym ?? '')) return atom;
  if (/^[PRUAFLT]$/.test(seen[i + 1]?.sym ?? '')) return atom;
  const hour = hourIn(atom);
  return hour === undefined ? atom : { ...atom, sym: 'W', moment: { time: hour.time, unsure: true } };
}

const CHANGES_TO = /^(?:to|now|until|till)$/;

/**
 * The start, the departure, and for "Saturday is now Friday 6pm" the day it was: what stands before the last "to" or
 * "now" that has a day or time on either side.
 */
export function gameTimes(lexed: Lexed): Slots {
  const departure = departureIn(lexed);
  const seen = lexed.seen.map(hourChangedTo);
  const isStart = (atom: Atom): boolean => atom.moment !== undefined && departure?.used.has(atom) !== true;
  const pivot = seen.findLastIndex(
    (atom, i) =>
      CHANGES_TO.test(atom.sym) && seen.slice(0, i).some(isStart) && seen.slice(i + 1).some(isStart),
  );
  const was = whenText(momentsOf(seen.slice(0, Math.max(0, pivot)).filter(isStart)));
  const starts = withBareHour(lexed, momentsOf(seen.slice(pivot + 1).filter(isStart)), departure);
  const wasDay = momentsOf(seen.slice(0, Math.max(0, pivot)).filter(isStart)).find(
    ({ day }) => day !== undefined,
  );
  const isBareTime =
    starts.length > 0 && starts.every(({ day, offset }) => day === undefined && offset === undefined);
  // "Friday game pushed to 8pm": it stays on Friday.
  const text = whenText(isBareTime && wasDay?.day !== undefined ? [{ day: wasDay.day }, ...starts] : starts);
  return {
    ...(text === undefined ? {} : { when: text }),
    ...(starts.some((moment) => moment.unsure) ? { time_unsure: true } : {}),
    ...(was === undefined ? {} : { when_was: was }),
    ...(departure ? { departs: departure.time, ...(departure.unsure ? { departs_unsure: true } : {}) } : {}),
  };
}

/** "friday 6": an hour nobody called am or pm. */
function withBareHour(
  { seen }: Lexed,
  moments: readonly Moment[],
  departure: Departure | undefined,
): Moment[] {
  if (moments.some(({ time }) => time !== undefined)) return [...moments];
  const bare = seen.find(
    (atom, i) =>
      atom.sym === 'N' &&
      seen[i - 1]?.moment?.day !== undefined &&
      !departure?.used.has(atom) &&
      !/^[PRU]$/.test(seen[i + 1]?.sym ?? ''),
  );
  const hour = bare && hourIn(bare);
  return hour ? [...moments, { time: hour.time, unsure: true }] : [...moments];
}

const momentsOf = (atoms: readonly Atom[]): Moment[] => atoms.flatMap((atom) => atom.moment ?? []);

const AT_NAME = /\bat\s+(?:the\s+)?(?!home\b|noon\b|midnight\b|least\b|most\b|the\b)([a-z][a-z .'-]*)/i;
const ENDS_NAME =
  /\s+(?:on|at|in|this|next|mon|tue|wed|thu|fri|sat|sun|today|tomorrow|away|home|for|with|and|we|is|to|leave|leaves|leaving|depart|departs|departure|bus|moved|cancell?ed|postponed|was|now|not|off|game|match)\w*\b.*$/i;

/** Whom the game is against: "vs Riverton", "at Riverton", lower case. */
export function against(lexed: Lexed): Slots {
  const versus = opponent(lexed).opponent;
  const name = typeof versus === 'string' ? versus : AT_NAME.exec(lexed.text)?.[1];
  const plain = (name ?? namedBefore(lexed.text) ?? strangerBefore(lexed))
    ?.replace(ENDS_NAME, '')
    .replace(/\s+(?:leave|leaves|leaving|bus)$/i, '')
    .trim()
    .toLowerCase();
  return plain ? { opponent: plain } : {};
}

const NAMED =
  /\b(?:the|our|til|till|until|before|after|for|to|of|whens|^)\s+((?:(?!(?:the|of|our|an?|next|is|are|do|we|for|to|til|till|until|before|what|time|that|this)\b)[a-z.'-]+\s+){1,3})(?:game|match|meet)\b/i;
const NO_NAME =
  /^(?:next|last|first|home|away|big|new|old|other|whole|same|mon|tue|wed|thu|fri|sat|sun|today|tomorrow|(?:wo)?men|soccer|football|volleyball|basketball|baseball|softball|swim|track|tennis|golf|lacrosse|hockey|wrestling|rowing)/i;

/** "the Riverton game". */
function namedBefore(text: string): string | undefined {
  const name = NAMED.exec(text)?.[1]?.trim();
  return name === undefined || NO_NAME.test(name) ? undefined : name;
}

/** "ridgeline game friday": the strange words right before it. */
function strangerBefore({ seen }: Lexed): string | undefined {
  const at = seen.findIndex(({ sym }) => /^(?:game|match|meet)$/.test(sym));
  const words: string[] = [];
  for (let i = at - 1; i >= 0 && seen[i]?.unknown; i--) words.unshift(seen[i]?.text ?? '');
  return words.length > 0 && words.length < 4 ? words.join(' ') : undefined;
}

export function side(lexed: Lexed): Slots {
  if (/ neutral /.test(lexed.shape)) return { home_away: 'neutral' };
  if (/ away /.test(lexed.shape)) return { home_away: 'away' };
  if (/ home /.test(lexed.shape)) return { home_away: 'home' };
  if (/\b(?:vs?\.?|versus|against)\s/i.test(lexed.text)) return {};
  const name = AT_NAME.exec(lexed.text)?.[1]?.replace(ENDS_NAME, '').trim();
  return name || /\s@\s*[a-z]/i.test(lexed.text) ? { home_away: 'away' } : {};
}

/** "44 people", "44 travelling": how many are fed. */
export function fed({ seen }: Lexed): Slots {
  const at = seen.findIndex(
    (atom, i) =>
      atom.sym === 'N' && (seen[i + 1]?.unit === 'person' || /^travel/.test(seen[i + 1]?.sym ?? '')),
  );
  const people = seen[at]?.value;
  return people === undefined ? {} : { people };
}
