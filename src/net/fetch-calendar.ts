import { lookup as systemLookup } from 'node:dns/promises';
import type { IncomingMessage } from 'node:http';
import http from 'node:http';
import https from 'node:https';
import { isIP, type LookupFunction } from 'node:net';
import { gunzipSync } from 'node:zlib';
import { MOST_BYTES } from '../kitchen/games/calendar/limits.ts';
import type { FetchCalendar, FetchedCalendar } from '../kitchen/games/calendar/reach.ts';
import { Problem } from '../nutrition/problem.ts';
import { isPublicAddress } from './public-address.ts';

const MOST_REDIRECTS = 3;

/** What may be reached and how; the defaults are the rules, a test names its own server instead. */
export interface FetchRules {
  resolve(host: string): Promise<readonly { readonly address: string; readonly family: number }[]>;
  mayConnect(address: string): boolean;
  readonly allowsPlainHttp: boolean;
  readonly timeoutMs: number;
}

const PUBLIC_HTTPS: FetchRules = {
  resolve: (host) => systemLookup(host, { all: true }),
  mayConnect: isPublicAddress,
  allowsPlainHttp: false,
  timeoutMs: 20_000,
};

/**
 * Fetches calendars by https from the public internet only: every address a name resolves to is checked, and the one
 * connected to again; redirects (three at most) go the same way. At most 5 MB, 20 seconds in all.
 */
export function createCalendarFetch(rules: FetchRules = PUBLIC_HTTPS): FetchCalendar {
  return async (url, etag) => {
    const signal = AbortSignal.timeout(rules.timeoutMs);
    let address = checkedUrl(url, rules);
    for (let hop = 0; hop <= MOST_REDIRECTS; hop++) {
      const response = await open(address, etag, rules, signal);
      const status = response.statusCode ?? 0;
      const location = response.headers.location;
      if (status >= 300 && status < 400 && status !== 304 && location !== undefined) {
        response.destroy();
        address = checkedUrl(
          URL.canParse(location, address.href) ? new URL(location, address).href : location,
          rules,
        );
        continue;
      }
      return await answered(response, status, signal);
    }
    throw refuse('The address sends on and on to other addresses.', 'Use the address it ends at.');
  };
}

function checkedUrl(text: string, rules: FetchRules): URL {
  if (!URL.canParse(text))
    throw refuse('That is not an address.', 'Write one like https://example.org/soccer.ics.');
  const url = new URL(text);
  const isHttps = url.protocol === 'https:' || (rules.allowsPlainHttp && url.protocol === 'http:');
  if (!isHttps)
    throw refuse('Calendars are fetched by https only.', 'Use the address that begins with https://.');
  if (url.username !== '' || url.password !== '') {
    throw refuse(
      'An address must not hold a user name or password.',
      'Use the public address of the calendar.',
    );
  }
  const host = url.hostname.replace(/^\[|\]$/g, '');
  if (isIP(host) !== 0 && !rules.mayConnect(host)) throw notPublic();
  return url;
}

const refuse = (message: string, hint: string): Problem => new Problem('not_possible', message, hint);
const notPublic = (): Problem =>
  refuse(
    'That address is not on the public internet.',
    'Use the public address of the calendar, or upload the file.',
  );

function open(
  url: URL,
  etag: string | undefined,
  rules: FetchRules,
  signal: AbortSignal,
): Promise<IncomingMessage> {
  return new Promise((resolve, reject) => {
    const options = {
      signal,
      lookup: checkedLookup(rules),
      agent: false,
      headers: {
        'user-agent': 'Batchbell calendar reader',
        accept: 'text/calendar, text/plain;q=0.5, */*;q=0.1',
        'accept-encoding': 'identity',
        ...(etag === undefined ? {} : { 'if-none-match': etag }),
      },
    };
    const request = url.protocol === 'https:' ? https.get(url, options) : http.get(url, options);
    request.on('socket', (socket) => {
      socket.on('connect', () => {
        if (!rules.mayConnect(socket.remoteAddress ?? '')) request.destroy(notPublic());
      });
    });
    request.on('response', resolve);
    request.on('error', (error) => reject(unreachable(error, signal)));
  });
}

/** Resolves a name and refuses it whole when one of its addresses is not public: that is how names are turned inward. */
function checkedLookup(rules: FetchRules): LookupFunction {
  return (host, options, done) => {
    rules.resolve(host).then(
      (found) => {
        const [first] = found;
        if (!first) return done(new Error('no address'), '', 4);
        if (found.some(({ address }) => !rules.mayConnect(address))) return done(notPublic(), '', 4);
        return options.all === true ? done(null, [...found]) : done(null, first.address, first.family);
      },
      (error: Error) => done(error, '', 4),
    );
  };
}

function unreachable(error: Error, signal: AbortSignal): Problem {
  if (error instanceof Problem) return error;
  if (signal.aborted)
    return new Problem('unavailable', 'The address takes too long to answer.', 'Try again later.');
  const { code } = error as NodeJS.ErrnoException;
  return new Problem(
    'unavailable',
    code === 'ENOTFOUND' ? 'There is no such address.' : 'The address cannot be reached.',
    'Check it in a browser, or upload the file instead.',
  );
}

async function answered(
  response: IncomingMessage,
  status: number,
  signal: AbortSignal,
): Promise<FetchedCalendar> {
  if (status === 304) {
    response.destroy();
    return { kind: 'unchanged' };
  }
  if (status !== 200) {
    response.destroy();
    throw new Problem(
      'unavailable',
      status === 401 || status === 403
        ? `The address wants a sign-in (${status}).`
        : `The address answers ${status}, not a calendar.`,
      'Use the public address of the calendar, or upload the file.',
    );
  }
  const bytes = unpacked(await bodyOf(response, signal), response.headers['content-encoding']);
  const { etag } = response.headers;
  return { kind: 'read', bytes, ...(etag === undefined ? {} : { etag }) };
}

async function bodyOf(response: IncomingMessage, signal: AbortSignal): Promise<Buffer> {
  const parts: Buffer[] = [];
  let size = 0;
  if (Number(response.headers['content-length'] ?? 0) > MOST_BYTES) {
    response.destroy();
    throw tooLarge();
  }
  try {
    for await (const part of response as AsyncIterable<Buffer>) {
      size += part.length;
      if (size > MOST_BYTES) throw tooLarge();
      parts.push(part);
    }
  } catch (error) {
    throw unreachable(error as Error, signal);
  } finally {
    response.destroy();
  }
  return Buffer.concat(parts);
}

function unpacked(body: Buffer, encoding: string | undefined): Buffer {
  if (encoding === undefined || encoding === 'identity') return body;
  if (encoding !== 'gzip') throw refuse(`The address answers in "${encoding}".`, 'Upload the file instead.');
  try {
    return gunzipSync(body, { maxOutputLength: MOST_BYTES });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE') throw tooLarge();
    throw refuse('What the address sends is damaged.', 'Try again, or upload the file.');
  }
}

const tooLarge = (): Problem =>
  new Problem(
    'bad_file',
    `That calendar is larger than ${MOST_BYTES / 1024 / 1024} MB.`,
    'Use the address of one sport or one season.',
  );
