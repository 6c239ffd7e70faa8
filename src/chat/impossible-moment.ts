import { Problem } from '../nutrition/problem.ts';
import type { Intent } from './slots.ts';

/** Requests that write down when something is or was. */
const WRITES_WHEN: ReadonlySet<Intent> = new Set([
  'game',
  'remind',
  'made',
  'served',
  'tossed',
  'counted',
  'temperature',
]);

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const CLOCK = /(?<![\d:./-])(\d{1,2}):(\d{2})(?![\d:])/g;
/** Neither the name of a lot nor a fraction of a measure. */
const SLASHED =
  /(?<![\d/.-]|\blot\s+#?)(\d{1,2})\/(\d{1,2})(?:\/\d{2,4})?(?![\d/]|\s*(?:of an?\b|cups?|c\b|tsps?|tbsps?|in\b|inch|lbs?|oz|qts?|quarts?|pts?|pints?|gals?|sheet|pans?|sticks?))/gi;
const DASHED = /(?<![\d-])(\d{4})-(\d{1,2})-(\d{1,2})(?![\d-])/g;
const NAMED = new RegExp(
  `\\b(${MONTHS.join('|')})[a-z]*\\.?\\s+(\\d{1,2})(?:st|nd|rd|th)?(?![\\d:/]|\\s*(?:am|pm)\\b)`,
  'gi',
);

/**
 * A day or hour that no calendar or clock has is said back, since the grammar would leave it out and the rest would be
 * written down as if it had not been said.
 * @throws Problem `bad_quantity`.
 */
export function refuseImpossibleMoment(text: string, intent: Intent): void {
  if (!WRITES_WHEN.has(intent)) return;
  for (const [said, hour, minute] of text.matchAll(CLOCK)) {
    if (Number(hour) > 23 || Number(minute) > 59) throw noClock(said);
  }
  for (const [said, month, day] of text.matchAll(SLASHED)) if (!isDay(month, day)) throw noDay(said);
  for (const [said, year, month, day] of text.matchAll(DASHED)) {
    if (!isDay(month, day, Number(year))) throw noDay(said);
  }
  for (const [said, name = '', day] of text.matchAll(NAMED)) {
    const month = MONTHS.indexOf(name.toLowerCase()) + 1;
    if (!isDay(String(month), day)) throw noDay(said);
  }
}

/** Without a year February has 29 days. */
function isDay(month = '', day = '', year = 2028): boolean {
  const [m, d] = [Number(month), Number(day)];
  return m >= 1 && m <= 12 && d >= 1 && d <= new Date(Date.UTC(year, m, 0)).getUTCDate();
}

const noClock = (said: string): Problem =>
  new Problem(
    'bad_quantity',
    `${said} is no time of day; nothing was written down.`,
    'Write it like 2:45pm or 14:45.',
  );

const noDay = (said: string): Problem =>
  new Problem(
    'bad_quantity',
    `${said.trim()} is no day of the calendar; nothing was written down.`,
    'Write month and day, like 12/5, Dec 5 or 2026-12-05.',
  );
