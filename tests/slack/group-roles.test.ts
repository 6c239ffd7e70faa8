import nock from 'nock';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { createGroupMembers } from '../../src/slack/group-members.ts';
import { createLog } from '../../src/slack/log.ts';
import { groupRoles } from '../../src/slack/role-list.ts';
import { ATHLETE, command, STAFF, TEAM } from './payloads.ts';
import { smallChat } from './small-chat.ts';
import { wire } from './wire.ts';

beforeEach(() => nock.disableNetConnect());
afterEach(() => {
  nock.cleanAll();
  nock.enableNetConnect();
});

/** Slack as far as roles ask it: everybody is a member, the group holds `group()` or answers an error. */
function slackWith(group: () => string[] | string): { lookUps: number } {
  const seen = { lookUps: 0 };
  nock('http://slack.test')
    .persist()
    .post('/api/usergroups.users.list')
    .reply(() => {
      seen.lookUps += 1;
      const said = group();
      return [200, typeof said === 'string' ? { ok: false, error: said } : { ok: true, users: said }];
    })
    .post('/api/users.info')
    .reply(200, { ok: true, user: { team_id: TEAM } })
    .post('/commands/answer')
    .reply(200, 'ok');
  return seen;
}

async function kitchen() {
  const clock = { now: 1_000_000, nowMs: () => clock.now };
  const members = createGroupMembers(clock, createLog('silent'));
  const chat = smallChat();
  const roleList = groupRoles(members, ['S0KITCHEN']);
  const { receiver } = await wire(chat, { clock, roleList });
  const roleOf = async (user: string) => {
    await receiver.send(command('40 oat bars', { user_id: user }));
    return chat.asked.at(-1)?.asker.role;
  };
  return { clock, roleOf };
}

test('members of the group are staff, one look-up for all, and not for long after they are taken out', async () => {
  let group = [STAFF];
  const seen = slackWith(() => group);
  const { clock, roleOf } = await kitchen();
  expect(await Promise.all([roleOf(STAFF), roleOf(STAFF)])).toEqual(['staff', 'staff']);
  expect(await roleOf(ATHLETE)).toBe('athlete');
  expect(seen.lookUps).toBe(1);
  group = [];
  clock.now += 121_000;
  expect(await roleOf(STAFF)).toBe('athlete');
  expect(seen.lookUps).toBe(2);
});

test('a failure of Slack keeps the last list for an hour at most, and never makes one up', async () => {
  let said: string[] | string = [STAFF];
  slackWith(() => said);
  const { clock, roleOf } = await kitchen();
  expect(await roleOf(STAFF)).toBe('staff');
  said = 'internal_error';
  clock.now += 30 * 60_000;
  expect(await roleOf(STAFF)).toBe('staff');
  clock.now += 31 * 60_000;
  expect(await roleOf(STAFF)).toBe('athlete');
});

test.each(['no_such_subteam', 'plan_upgrade_required', 'missing_scope'])(
  'a workspace that has no such group (%s) has no staff by it',
  async (error) => {
    slackWith(() => error);
    expect(await (await kitchen()).roleOf(STAFF)).toBe('athlete');
  },
);
