import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { calendarFile } from '../helpers/calendars.ts';
import { command, directMessage, eventBody, mention, STAFF, TEAM } from '../slack/payloads.ts';
import { REPLIES, replies, textOf } from './screens.ts';
import { type Mode, startWhole, type WholeService } from './whole-service.ts';

describe.each<Mode>(['http', 'socket'])('files over %s', (mode) => {
  let whole: WholeService;
  beforeAll(async () => {
    whole = await startWhole(mode);
  });
  afterAll(() => whole.stop());
  beforeEach(() => {
    whole.forget();
    whole.peer.fail.clear();
  });

  /** What is answered to a message with a file, sent to the bot. */
  async function sends(name: string, mimetype: string, bytes: Buffer): Promise<string> {
    whole.peer.files.set(`/files/F1/${name}`, bytes);
    const url = `${whole.peer.origin}/files/F1/${name}`;
    const files = [{ id: 'F1', name, mimetype, url_private_download: url }];
    await whole.event(eventBody(directMessage('', { user: STAFF, subtype: 'file_share', files })));
    return textOf(replies(await whole.seen(1, REPLIES))[0]);
  }

  test('a calendar file sent to the bot is imported', async () => {
    expect(await sends('soccer.ics', 'text/calendar', Buffer.from(calendarFile('plain')))).toMatch(
      /\d+ added/,
    );
  });

  test('a roster sent to the bot is imported, and what could not be read is told by line', async () => {
    const roster = 'code,allergies\nWP-01,peanut\nnobody at all,milk\n';
    const text = await sends('roster.csv', 'text/csv', Buffer.from(roster));
    expect(text).toMatch(/^Roster: 1 added/);
    expect(text).toMatch(/line 3, code/);
    expect((await whole.store.kitchen.rosters(TEAM).all()).map(({ code }) => code)).toEqual(['WP-01']);
    expect(whole.log.join('')).not.toMatch(/WP-01|peanut|nobody at all/);
  });

  test('the schedule is a file in the thread it was asked for in', async () => {
    await whole.event(eventBody(mention('export schedule', { user: STAFF, thread_ts: '7.1' })));
    const calls = await whole.seen(1, REPLIES);
    const shared = calls.find(({ method }) => method === 'files.completeUploadExternal');
    expect(shared?.body).toMatchObject({ channel_id: 'C0KITCHEN', thread_ts: '7.1' });
    const [{ id }] = JSON.parse(String(shared?.body.files)) as [{ id: string }];
    expect(String(whole.peer.uploads.get(id))).toMatch(/^BEGIN:VCALENDAR[\s\S]*END:VCALENDAR/);
    expect(textOf(replies(calls)[0])).toContain('Attached: prep-schedule.ics');
  });

  test('the temperature log asked for by command goes to the asker directly; as text where it cannot be attached', async () => {
    await whole.command(command('fridge a 37F', { user_id: STAFF }));
    await whole.seen(1, REPLIES);
    const asks = async () => {
      whole.forget();
      await whole.command(command('temperature log', { user_id: STAFF }));
      return whole.seen(1, /^respond$/);
    };
    const calls = await asks();
    expect(calls.find(({ method }) => method === 'files.completeUploadExternal')?.body.channel_id).toBe(
      'D0STAFF',
    );
    expect(textOf(replies(calls)[0])).toContain('Sent to you in a direct message: temperature-');
    whole.peer.fail.set('files.getUploadURLExternal', 'missing_scope');
    const without = replies(await asks());
    expect(JSON.stringify(without[0]?.body.blocks)).toMatch(/temperature-[^"]*\.csv/);
  });
});
