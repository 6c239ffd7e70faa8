import type { Moment } from '../atoms.ts';
import { DAY_WORDS, MONTHS } from '../vocabulary/days.ts';
import { NUMBER_WORDS } from '../vocabulary/numbers.ts';
import { type Found, type Line, spanText, wordAt } from './cursor.ts';
import { writtenDate } from './written-date.ts';

/** A day, a clock time, a date or an offset that starts at this token. */
export function momentAt(line: Line, i: number): Found | undefined {
  const token = line.tokens[i];
  if (!token) return undefined;
  if (token.kind === 'number') return clockAt(line, i) ?? dateAt(line, i);
  if (token.kind === 'sign') return token.raw === '+' ? offsetAt(line, i + 1, i) : undefined;
  if (token.kind !== 'word') return undefined;
  return wordMomentAt(line, i, token.word);
}

function found(line: Line, from: number, next: number, moment: Moment): Found {
  return { atom: { sym: 'W', ...spanText(line, from, next), moment }, next };
}

/** "14:30", "3pm", "3:30 p.m.". */
function clockAt(line: Line, i: number): Found | undefined {
  const raw = line.tokens[i]?.raw ?? '';
  const bare = fourDigits(line, i, raw);
  if (bare) return bare;
  if (!raw.includes(':') && !HALF_OF_DAY.has(wordAt(line, i + 1))) return undefined;
  const match = /^(\d{1,2})(?::(\d\d))?$/.exec(raw);
  if (!match) return undefined;
  const half = halfOfDay(line, i + 1);
  if (wordAt(line, i + 1) === 'oclock') return oclockAt(line, i, Number(match[1]));
  if (match[2] === undefined && !half) return undefined;
  const said = Number(match[1]);
  const minute = Number(match[2] ?? 0);
  if (said > 23 || minute > 59 || (half && (said > 12 || said === 0))) return undefined;
  const hour = half ? (said % 12) + (half.pm ? 12 : 0) : said;
  return found(line, i, half?.next ?? i + 1, {
    time: clock(hour, minute),
    ...(half || said > 12 || said === 0 || match[1]?.startsWith('0') ? {} : { unsure: true }),
  });
}

/** "9 o'clock": nobody said morning or evening. */
const oclockAt = (line: Line, i: number, hour: number): Found | undefined =>
  hour < 1 || hour > 12
    ? undefined
    : found(line, i, i + 2, { time: clock(hour < 6 ? hour + 12 : hour, 0), unsure: true });

/** "0800"; "1430" after a day, "at" or "by". */
function fourDigits(line: Line, i: number, raw: string): Found | undefined {
  const match = /^([01]\d|2[0-3])([0-5]\d)$/.exec(raw);
  if (!match || line.tokens[i]?.kind !== 'number') return undefined;
  const before = wordAt(line, i - 1);
  if (!raw.startsWith('0') && !/^(at|by|@)$/.test(before) && !DAY_WORDS.has(before)) return undefined;
  return found(line, i, /^(hrs?|hours)$/.test(wordAt(line, i + 1)) ? i + 2 : i + 1, {
    time: `${match[1]}:${match[2]}`,
  });
}

const HALF_OF_DAY: ReadonlySet<string> = new Set(['am', 'pm', 'a', 'p', 'in', 'oclock']);

function halfOfDay(line: Line, i: number): { pm: boolean; next: number } | undefined {
  const word = wordAt(line, i);
  if (word === 'am' || word === 'pm') return { pm: word === 'pm', next: i + 1 };
  if ((word === 'a' || word === 'p') && wordAt(line, i + 1) === '.' && wordAt(line, i + 2) === 'm') {
    return { pm: word === 'p', next: wordAt(line, i + 3) === '.' ? i + 4 : i + 3 };
  }
  if (
    word === 'in' &&
    wordAt(line, i + 1) === 'the' &&
    /^(morning|afternoon|evening)$/.test(wordAt(line, i + 2))
  ) {
    return { pm: wordAt(line, i + 2) !== 'morning', next: i + 3 };
  }
  return undefined;
}

export const clock = (hour: number, minute: number): string =>
  `${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;

/** "12/5", "2026-12-05", "5 dec": read by the date library. */
function dateAt(line: Line, i: number): Found | undefined {
  const raw = line.tokens[i]?.raw ?? '';
  const written = /^\d{4}-\d\d-\d\d$|^(?:0?[1-9]|1[0-2])\/(?:0?[1-9]|[12]\d|3[01])(?:\/\d{2,4})?$/.test(raw);
  const monthNext = /^\d{1,2}$/.test(raw) && MONTHS.has(wordAt(line, i + 1)) && wordAt(line, i + 1) !== 'may';
  if (!written && !monthNext) return undefined;
  return dateFrom(line, i, written ? i + 1 : i + 2);
}

function dateFrom(line: Line, i: number, next: number): Found | undefined {
  const { word } = spanText(line, i, next);
  const day = writtenDate(word, line.nowMs, line.timeZone);
  if (day === undefined) return undefined;
  const isFar = Date.parse(day) > line.nowMs + HALF_A_YEAR_MS && !/\d{4}|\/.*\//.test(word);
  return found(line, i, next, {
    day,
    ...(isFar ? { past: `${Number(day.slice(0, 4)) - 1}${day.slice(4)}` } : {}),
  });
}

/** A date without a year that is farther ahead than this may be one that was. */
const HALF_A_YEAR_MS = 180 * 86_400_000;

function wordMomentAt(line: Line, i: number, word: string): Found | undefined {
  const day = DAY_WORDS.get(word) ?? DAY_WORDS.get(line.forms[i] ?? '');
  if (day !== undefined) return isVerb(line, i) ? undefined : found(line, i, i + 1, { day });
  if (MONTHS.has(word) && /^\d{1,2}$/.test(line.tokens[i + 1]?.raw ?? '')) {
    const tail = /^(st|nd|rd|th)$/.test(wordAt(line, i + 2)) ? i + 3 : i + 2;
    return dateFrom(line, i, tail);
  }
  switch (word) {
    case 'noon':
      return found(line, i, i + 1, { time: '12:00' });
    case 'midnight':
      return found(line, i, i + 1, { time: '00:00' });
    case 'every':
    case 'each':
      return everyAt(line, i);
    case 'daily':
      return found(line, i, i + 1, { day: 'day', every: true });
    case 'in':
      return offsetAt(line, i + 1, i);
    case 'this':
    case 'next':
    case 'last':
      return relativeAt(line, i, word);
    case 'day':
    case 'night':
    case 'morning':
    case 'evening':
      return dayBeforeGameAt(line, i);
    case 'game':
      return gameOffsetAt(line, i);
    default:
      return undefined;
  }
}

/** "Bars sat on the counter", "sun butter": no day. */
const isVerb = (line: Line, i: number): boolean =>
  (wordAt(line, i) === 'sat' &&
    i > 0 &&
    /^(on|in|out|there|at|for|over|overnight|around)$/.test(wordAt(line, i + 1)) &&
    !/^(game|match|meet|on|this|next)$/.test(wordAt(line, i - 1)) &&
    !(wordAt(line, i + 1) === 'at' && isClock(line, i + 2)) &&
    line.tokens[i]?.raw === 'sat') ||
  (wordAt(line, i) === 'sun' && /^(butter|dried)$/.test(wordAt(line, i + 1)));

const isClock = (line: Line, i: number): boolean =>
  (line.tokens[i]?.raw ?? '').includes(':') || /^(am|pm|noon)$/.test(wordAt(line, i + 1));

function everyAt(line: Line, i: number): Found | undefined {
  const other = wordAt(line, i + 1);
  if (/^(day|morning|evening|night|afternoon)$/.test(other))
    return found(line, i, i + 2, { day: 'day', every: true });
  const day = DAY_WORDS.get(other);
  if (day !== undefined) return found(line, i, i + 2, { day, every: true });
  return other === 'week' ? found(line, i, i + 2, { day: 'week', every: true }) : undefined;
}

function relativeAt(line: Line, i: number, word: string): Found | undefined {
  const unit = wordAt(line, i + 1);
  if (unit === 'week' || unit === 'month')
    return found(line, i, i + 2, { day: word === 'this' ? unit : `${word} ${unit}` });
  if (word === 'last' && unit === 'night') return found(line, i, i + 2, { day: 'yesterday' });
  if (word === 'this' && /^(morning|afternoon|evening|am|pm)$/.test(unit))
    return found(line, i, i + 2, { day: 'today' });
  const day = DAY_WORDS.get(unit);
  return day === undefined ? undefined : found(line, i, i + 2, { day });
}

/** "in 20 min", "+2h": minutes, hours or days from now. */
function offsetAt(line: Line, start: number, from: number): Found | undefined {
  let i = start;
  while (/^(like|about|around|roughly|approx|approximately|maybe)$/.test(wordAt(line, i))) i++;
  const word = wordAt(line, i);
  const half = word === 'half' && /^(an?|hour|hr)$/.test(wordAt(line, i + 1));
  const bare = half && !/^an?$/.test(wordAt(line, i + 1));
  const whole = half ? 0.5 : /^an?$/.test(word) ? 1 : (NUMBER_WORDS.get(word) ?? Number(line.tokens[i]?.raw));
  const at = half && !bare ? i + 2 : i + 1;
  const unit = wordAt(line, at);
  const more = wordAt(line, at + 1) === 'and' && wordAt(line, at + 3) === 'half' ? 3 : 0;
  const amount = whole + (more > 0 ? 0.5 : 0);
  const next = at + 1 + more;
  if (!(amount > 0) || /^(before|after|ago)$/.test(wordAt(line, next))) return undefined;
  if (/^(d|days?)$/.test(unit)) return found(line, from, next, { offset: `+${amount}d` });
  if (/^(weeks?)$/.test(unit)) return found(line, from, next, { offset: `+${amount * 7}d` });
  if (/^(m|mins?|minutes?|minuts)$/.test(unit)) return found(line, from, next, { offset: `+${amount}min` });
  if (/^(h|hrs?|hours?)$/.test(unit)) return found(line, from, next, { offset: `+${amount * 60}min` });
  return undefined;
}

/** Words before the game may name it; words of a task end the search. */
const GAME_OR_TASK =
  /^(games?|match|matches|meet|to|and|for|of|with|from|we|they|i|you|get|leaves?|remind|[.,;:!?]|)$/;

/** "the day before the game", "the day before the Mill Bay game". */
function dayBeforeGameAt(line: Line, i: number): Found | undefined {
  if (wordAt(line, i + 1) !== 'before') return undefined;
  let next = i + 2;
  while (next < i + 6 && !GAME_OR_TASK.test(wordAt(line, next))) next++;
  return /^(games?|match|matches|meet)$/.test(wordAt(line, next))
    ? found(line, i, next + 1, { offset: 'game -1d' })
    : undefined;
}

/** "game -1d", "game - 3h". */
function gameOffsetAt(line: Line, i: number): Found | undefined {
  if (line.tokens[i + 1]?.raw !== '-' || line.tokens[i + 2]?.kind !== 'number') return undefined;
  const unit = /^(d|h|min)/.exec(wordAt(line, i + 3))?.[1];
  return unit === undefined
    ? undefined
    : found(line, i, i + 4, { offset: `game -${line.tokens[i + 2]?.raw}${unit}` });
}
