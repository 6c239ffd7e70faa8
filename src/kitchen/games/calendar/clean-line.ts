/** Properties that hold dates, cleaned before the parser reads them. */
const DATES = new Set(['DTSTART', 'DTEND', 'RECURRENCE-ID', 'EXDATE', 'RDATE', 'DTSTAMP', 'LAST-MODIFIED']);

const DATE_LINE = /^([A-Z-]+)((?:;.*?)?):\s*["']?(\d{4}-?\d{2}-?\d{2}(?:[T ,].*|Z)?["']?)$/i;
const ONE_DATE =
  /^(\d{4})-?(\d{2})-?(\d{2})(?:[T ](\d{2}):?(\d{2})(?::?(\d{2})(?:\.\d+)?)?\s*(Z|[+-]\d{2}:?\d{2})?)?$/i;

/** The name of a content line, without a quote that strayed into it. */
export function lineName(text: string): string {
  return (/^[A-Za-z0-9-]+/.exec(text)?.[0] ?? '').toUpperCase();
}

/**
 * A content line as the standard would have it, where feeds are known to slip: quotes and HTML around a date, dashes
 * and colons in it, seconds left out, DATE and DATE-TIME mixed up, a zone beside UTC, a numeric offset (read as the
 * instant it names), a quote in the property's name.
 */
export function cleanLine(text: string): string {
  const name = lineName(text);
  if (DATES.has(name)) return cleanDateLine(text) ?? text;
  return text.replace(/^([A-Za-z0-9-]+)["']+\s*(?=[;:])/, '$1').replace(/^([A-Za-z0-9-]+)\s+(?=[;:])/, '$1');
}

function cleanDateLine(text: string): string | undefined {
  const match = DATE_LINE.exec(text.replace(/<[^>]*>?/g, '').trim());
  if (!match) return undefined;
  const [, name = '', params = '', value = ''] = match;
  const dates = value
    .replace(/["']/g, '')
    .split(',')
    .map((part) => oneDate(part.trim()));
  const first = dates[0];
  if (!first || dates.some((date) => date === undefined || date.includes('T') !== first.includes('T'))) {
    return undefined;
  }
  const tzid = /;TZID=\s*(.*?)\s*(?=;[A-Z-]+=|$)/i.exec(params)?.[1]?.replace(/["']/g, '');
  const zoned = first.includes('T') && !first.endsWith('Z') && tzid ? `;TZID="${tzid}"` : '';
  const range = /;RANGE=THISANDFUTURE/i.test(params) ? ';RANGE=THISANDFUTURE' : '';
  const kind = first.includes('T') ? '' : ';VALUE=DATE';
  return `${name.toUpperCase()}${kind}${zoned}${range}:${dates.join(',')}`;
}

function oneDate(text: string): string | undefined {
  const match = ONE_DATE.exec(text);
  if (!match) return undefined;
  const [, year, month, day, hour, minute, second = '00', offset] = match;
  if (hour === undefined) return `${year}${month}${day}`;
  const local = `${year}${month}${day}T${hour}${minute}${second}`;
  if (offset === undefined) return local;
  if (/z/i.test(offset)) return `${local}Z`;
  const zone = offset.includes(':') ? offset : `${offset.slice(0, 3)}:${offset.slice(3)}`;
  const ms = Date.parse(`${year}-${month}-${day}T${hour}:${minute}:${second}${zone}`);
  return Number.isNaN(ms) ? undefined : new Date(ms).toISOString().replace(/[-:]|\.\d+/g, '');
}
