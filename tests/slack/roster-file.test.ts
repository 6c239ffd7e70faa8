import nock from 'nock';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createChat } from '../../src/chat/chat.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';
import { ATHLETE, directMessage, eventBody, mention, STAFF, TEAM } from './payloads.ts';
import { type Call, fakeSlack, sent, type Wired, wire } from './wire.ts';

const INTERN = 'U0INTERN';
const ROSTER = [
  'code,team,allergies,vegan,likes,pieces',
  'WP-01,water polo,peanut,,oat bars,2',
  'Jordan Smith,water polo,milk,,,',
  'WP-03,water polo,,yes,,many',
  'WP-07,rowing,tree nut; plonk,,,1',
].join('\n');
const rethrow = (error: unknown): never => {
  throw error;
};
let store: RememberingKitchen;
let wired: Wired;
let calls: Call[];

beforeEach(async () => {
  const clock = { now: Date.UTC(2026, 8, 14, 15), nowMs: () => clock.now };
  store = await rememberingKitchen(clock);
  wired = await wire(createChat(store.kitchen, rethrow), { clock, interns: [INTERN] });
  calls = fakeSlack();
});
afterEach(async () => {
  await store.close();
  nock.cleanAll();
});

const file = (more: object = {}) => ({
  id: 'F1',
  name: 'roster.csv',
  mimetype: 'text/csv',
  size: 400,
  url_private_download: 'http://slack.test/files/F1/roster.csv',
  ...more,
});
/** Slack's file server; how often it was asked. */
function serves(body: Buffer | string = ROSTER): { asked: number } {
  const seen = { asked: 0 };
  nock('http://slack.test')
    .persist()
    .get('/files/F1/roster.csv')
    .reply(() => {
      seen.asked += 1;
      return [200, body];
    });
  return seen;
}
async function sends(payload: object): Promise<Call[]> {
  calls.length = 0;
  await wired.receiver.send(payload as never);
  await wired.inFlight.drain(5_000);
  // Files of one worker share the wire: a home that another one left open may still be drawn.
  return sent(calls).filter(({ method }) => method.startsWith('chat.'));
}
const direct = (files: object[], more: object = {}) =>
  eventBody(directMessage('', { user: STAFF, subtype: 'file_share', files, ...more }));
const people = async () => (await store.kitchen.rosters(TEAM).all()).map(({ code }) => code).sort();

describe('a roster sent to the bot', () => {
  test('by staff: the good lines are kept, each other one is told by line and field, to the sender alone', async () => {
    serves();
    const [answer, ...others] = await sends(direct([file()]));
    expect(others).toEqual([]);
    expect(answer).toMatchObject({ method: 'chat.postMessage', body: { channel: 'D0ATHLETE' } });
    const text = String(answer?.body.text);
    expect(text).toMatch(/^Roster: \d+ added, 0 changed, 0 unchanged, \d+ to look at/);
    expect(text).toMatch(/line 3, code/);
    expect(text).toMatch(/line 4, pieces/);
    expect(text).toMatch(/line 5, allergies/);
    expect(await people()).toEqual(['WP-01', 'WP-03', 'WP-07']);
    // A name is never kept, shown or logged.
    expect(text).not.toContain('Jordan');
    expect(wired.log.join('')).not.toMatch(/Jordan|WP-0|peanut|roster\.csv/);
  });

  test('with words beside it, and again, changes nothing twice', async () => {
    serves();
    await sends(direct([file()]));
    const [again] = await sends(direct([file()], { text: 'import our roster' }));
    expect(String(again?.body.text)).toMatch(/^Roster: 0 added, 0 changed/);
  });

  test('in a channel is answered to the sender alone, who is told that the file is not', async () => {
    serves();
    const asked = mention('our roster', { user: STAFF, subtype: 'file_share', files: [file()] });
    const [answer, ...others] = await sends(eventBody(asked));
    expect(others).toEqual([]);
    expect(answer).toMatchObject({ method: 'chat.postEphemeral', body: { user: STAFF } });
    expect(String(answer?.body.text)).toContain('delete it there');
  });

  test.each([
    ['an intern', INTERN],
    ['an athlete', ATHLETE],
  ])('by %s is not even fetched', async (_, user) => {
    const seen = serves();
    const [answer] = await sends(direct([file()], { user }));
    expect(String(answer?.body.text)).toContain('between that person and the staff');
    expect(seen.asked).toBe(0);
    expect(await people()).toEqual([]);
  });

  test.each([
    ['too large, by what Slack says', file({ size: 3 * 1024 * 1024 }), ROSTER, /I read rosters up to 2 MB/],
    ['too large in fact', file(), Buffer.alloc(3 * 1024 * 1024, 'a'), /I read rosters up to 2 MB/],
    ['no table', file(), '<html>Sign in</html>', /code/],
    ['empty', file(), '', /empty|code/],
    [
      'a spreadsheet',
      file({ name: 'roster.xlsx', mimetype: 'application/x' }),
      ROSTER,
      /roster as a \.csv file/,
    ],
  ])('%s: nothing is kept, and it is said', async (_, sentFile, body, words) => {
    serves(body);
    const [answer] = await sends(direct([sentFile]));
    expect(String(answer?.body.text)).toMatch(words);
    expect(await people()).toEqual([]);
  });

  test('beside a call for help: the call is answered', async () => {
    const seen = serves();
    const [answer] = await sends(direct([file()], { text: 'she ate a bar and cannot breathe' }));
    expect(String(answer?.body.text)).toMatch(/^Call 911/);
    expect(seen.asked).toBe(0);
  });
});
