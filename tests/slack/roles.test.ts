import nock from 'nock';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { command, eventBody, mention, STAFF, TEAM } from './payloads.ts';
import { smallChat } from './small-chat.ts';
import { fakeSlack, wire } from './wire.ts';

beforeEach(() => nock.disableNetConnect());
afterEach(() => {
  nock.cleanAll();
  nock.enableNetConnect();
});

async function roleOf(payload: object, user: object = {}, fail: Record<string, string> = {}) {
  fakeSlack(fail, user);
  const chat = smallChat();
  const { receiver } = await wire(chat);
  await receiver.send(payload);
  return chat.asked[0]?.asker.role;
}

describe('roles', () => {
  test('a listed member is staff, any other member an athlete', async () => {
    expect(await roleOf(command('40 oat bars', { user_id: STAFF }))).toBe('staff');
    expect(await roleOf(command('40 oat bars'))).toBe('athlete');
  });

  test.each([
    ['a guest', { is_restricted: true }],
    ['a guest of one channel', { is_ultra_restricted: true }],
    ['a stranger of a shared channel', { is_stranger: true }],
    ['a member of another workspace', { team_id: 'T0OTHER' }],
    ['a deactivated member', { deleted: true }],
    ['a bot', { is_bot: true }],
  ])('%s is a guest, listed or not', async (_, user) => {
    expect(await roleOf(command('40 oat bars', { user_id: STAFF }), user)).toBe('guest');
  });

  test('a member of the same organization who is in this workspace is a member', async () => {
    const user = { team_id: 'T0OTHER', enterprise_user: { teams: ['T0OTHER', TEAM] } };
    expect(await roleOf(command('40 oat bars'), user)).toBe('athlete');
  });

  test('a mention from another workspace comes from a guest', async () => {
    expect(await roleOf(eventBody(mention('40 oat bars', { user: STAFF, team: 'T0OTHER' })))).toBe('guest');
  });

  test('somebody Slack cannot tell us about is a guest', async () => {
    const payload = command('40 oat bars', { user_id: STAFF });
    expect(await roleOf(payload, {}, { 'users.info': 'missing_scope' })).toBe('guest');
  });

  test('is looked up again after a minute, not for every message', async () => {
    const calls = fakeSlack();
    const { receiver, clock } = await wire(smallChat());
    const lookUps = () => calls.filter((call) => call.method === 'users.info').length;
    await receiver.send(command('40 oat bars'));
    await receiver.send(command('40 oat bars'));
    expect(lookUps()).toBe(1);
    clock.now += 61_000;
    await receiver.send(command('40 oat bars'));
    expect(lookUps()).toBe(2);
  });
});
