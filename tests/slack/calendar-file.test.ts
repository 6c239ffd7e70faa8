import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import nock from 'nock';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createChat } from '../../src/chat/chat.ts';
import { createCalendarFetch } from '../../src/net/fetch-calendar.ts';
import { calendarFile } from '../helpers/calendars.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';
import { ATHLETE, command, directMessage, eventBody, mention, STAFF } from './payloads.ts';
import { type Call, fakeSlack, sent, type Wired, wire } from './wire.ts';

let store: RememberingKitchen;
let server: Server;
let port = 0;
let wired: Wired;
let calls: Call[];
const rethrow = (error: unknown): never => {
  throw error;
};

beforeEach(async () => {
  const clock = { now: Date.UTC(2026, 8, 14, 15), nowMs: () => clock.now };
  store = await rememberingKitchen(clock);
  server = createServer((_, response) => response.end(calendarFile('plain')));
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  port = (server.address() as AddressInfo).port;
  const fetch = createCalendarFetch({
    resolve: async () => [{ address: '127.0.0.1', family: 4 }],
    mayConnect: () => true,
    allowsPlainHttp: true,
    timeoutMs: 2_000,
  });
  wired = await wire(createChat({ ...store.kitchen, calendars: { fetch } }, rethrow), { clock });
  calls = fakeSlack();
});
afterEach(async () => {
  await store.close();
  await new Promise((done) => server.close(done));
  nock.cleanAll();
});

const file = (more: object = {}) => ({
  id: 'F1',
  name: 'soccer.ics',
  mimetype: 'text/calendar',
  size: 2_000,
  url_private_download: 'http://slack.test/files/F1/soccer.ics',
  ...more,
});
const message = (files: object[], more: object = {}) =>
  eventBody(directMessage('', { user: STAFF, subtype: 'file_share', files, ...more }));
async function send(payload: object): Promise<Call[]> {
  calls.length = 0;
  await wired.receiver.send(payload as never);
  await wired.inFlight.drain(2000);
  return sent(calls);
}
const textOf = async (payload: object): Promise<string> => String((await send(payload)).at(-1)?.body.text);
const games = () => store.kitchen.games('T0HERONS').between('2000-01-01' as never, '2100-01-01' as never);

/** Slack's file server: who brings the token gets the bytes. */
function files(body: Buffer | string = calendarFile('plain'), status = 200): string[] {
  const tokens: string[] = [];
  nock('http://slack.test')
    .get('/files/F1/soccer.ics')
    .reply(function reply() {
      tokens.push(String(this.req.headers.authorization));
      return [status, body];
    });
  return tokens;
}

describe('a calendar file in Slack', () => {
  test('sent to the bot is imported, fetched with the token of the bot', async () => {
    const tokens = files();
    expect(await textOf(message([file()]))).toMatch(/\d+ added/);
    expect(tokens).toEqual(['Bearer xoxb-test']);
    expect((await games()).length).toBeGreaterThan(0);
  });

  test('with words beside it, and in a mention with a thread', async () => {
    files();
    expect(await textOf(message([file()], { text: 'our fall schedule' }))).toMatch(/added/);
    files();
    const asked = mention('here it is', { user: STAFF, subtype: 'file_share', files: [file()] });
    expect(await textOf(eventBody(asked))).toMatch(/unchanged/);
  });

  test('among others is the one that is read', async () => {
    files();
    const photo = { id: 'F2', name: 'tray.png', mimetype: 'image/png', url_private: 'http://slack.test/x' };
    expect(await textOf(message([photo, file()]))).toMatch(/added/);
  });

  test('that Slack names only by its id is asked for', async () => {
    const { url_private_download: _gone, ...bare } = file();
    expect(await textOf(message([bare]))).toContain('did not hand over soccer.ics');
    expect(calls.map(({ method }) => method)).toContain('files.info');
  });

  test.each([
    ['too large, by what Slack says', file({ size: 6 * 1024 * 1024 }), undefined, 'up to 5 MB'],
    ['too large in fact', file(), Buffer.alloc(6 * 1024 * 1024), 'up to 5 MB'],
    ['a page instead of a calendar', file(), '<html>Sign in</html>', 'calendar'],
    ['a photo', file({ name: 'tray.png', mimetype: 'image/png' }), undefined, 'is no calendar'],
    [
      'kept elsewhere',
      file({ url_private_download: 'https://files.example.org/F1' }),
      undefined,
      'did not hand over',
    ],
    [
      'without https',
      file({ url_private_download: 'http://files.slack.com/F1' }),
      undefined,
      'did not hand over',
    ],
  ])('%s: nothing is imported, and it is said', async (_, sentFile, body, says) => {
    if (body !== undefined) files(body);
    expect(await textOf(message([sentFile]))).toContain(says);
    expect(await games()).toEqual([]);
  });

  test('that Slack sends us to sign in for is not followed', async () => {
    files('', 302);
    expect(await textOf(message([file()]))).toContain('did not hand over');
  });

  test('of an athlete is not even fetched', async () => {
    const tokens = files();
    expect(await textOf(message([file()], { user: ATHLETE }))).toContain('for kitchen staff');
    expect(tokens).toEqual([]);
  });

  test('beside a call for help: the call is answered', async () => {
    files();
    const text = 'she ate a bar and cannot breathe';
    expect(await textOf(message([file()], { text }))).toMatch(/^Call 911/);
    expect(await games()).toEqual([]);
  });

  test('a photo beside words: the words are answered', async () => {
    const photo = { id: 'F2', name: 'tray.png', mimetype: 'image/png' };
    expect(await textOf(message([photo], { text: '40 oat bars' }))).toMatch(/^40 /);
  });
});

describe('a calendar behind an address, as Slack writes addresses', () => {
  test.each([
    ['<http://calendar.test:PORT/soccer.ics>'],
    ['<http://calendar.test:PORT/soccer.ics|http://calendar.test:PORT/soccer.ics>'],
  ])('%s', async (address) => {
    const text = `import ${address.replaceAll('PORT', String(port))}`;
    expect(await textOf(command(text, { user_id: STAFF }))).toMatch(/soccer\.ics: \d+ added/);
  });
});
