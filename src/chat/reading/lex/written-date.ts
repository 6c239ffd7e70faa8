import { createRequire } from 'node:module';

type Chrono = typeof import('chrono-node');
let chrono: Chrono | undefined;

/** Loaded at the first written date: the library takes longer to load than most messages take to answer. */
const library = (): Chrono => {
  chrono ??= createRequire(import.meta.url)('chrono-node') as Chrono;
  return chrono;
};

/**
 * A date as somebody wrote it, as YYYY-MM-DD; one without a year is the next such day from today in the zone.
 * @example writtenDate('12/5', Date.parse('2026-11-25'), 'America/Chicago') // '2026-12-05'
 */
export function writtenDate(text: string, nowMs: number, timeZone: string): string | undefined {
  const today = new Intl.DateTimeFormat('en-CA', { timeZone }).format(nowMs);
  const [year = 1970, month = 1, day = 1] = today.split('-').map(Number);
  const reference = new Date(year, month - 1, day, 12);
  const start = library().en.casual.parse(text, reference, { forwardDate: true })[0]?.start;
  if (!start?.isCertain('day')) return undefined;
  const two = (part: number | null) => String(part ?? 0).padStart(2, '0');
  return `${start.get('year')}-${two(start.get('month'))}-${two(start.get('day'))}`;
}
