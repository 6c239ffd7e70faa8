import nock from 'nock';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { BOT, command, directMessage, eventBody, mention, press } from './payloads.ts';
import { smallChat } from './small-chat.ts';
import { fakeSlack, sent, wire } from './wire.ts';

beforeEach(() => nock.disableNetConnect());
afterEach(() => {
  nock.cleanAll();
  nock.enableNetConnect();
});

describe('what is not a request', () => {
  test.each([
    ['our own direct message', directMessage('40 oat bars', { user: BOT.botUserId, bot_id: BOT.botId })],
    ['our own, without a bot id', directMessage('40 oat bars', { user: BOT.botUserId })],
    ['another bot', directMessage('40 oat bars', { bot_id: 'B1' })],
    ['another bot, as a subtype', directMessage('40 oat bars', { subtype: 'bot_message', bot_id: 'B1' })],
    ['an edit', directMessage('', { subtype: 'message_changed', message: { text: '40 oat bars' } })],
    ['a deletion', directMessage('', { subtype: 'message_deleted', hidden: true })],
    ['an edited message sent again', directMessage('40 oat bars', { edited: { user: 'U0', ts: '2.2' } })],
    ['a message in a channel', directMessage('40 oat bars', { channel_type: 'channel', channel: 'C1' })],
    ['a mention by a bot', mention('40 oat bars', { bot_id: 'B1' })],
    ['a mention put in by an edit', mention('40 oat bars', { edited: { user: 'U0', ts: '2.2' } })],
    ['a message without text', directMessage('')],
  ])('is ignored: %s', async (_, event) => {
    const calls = fakeSlack();
    const { receiver } = await wire(smallChat());
    expect(await receiver.send(eventBody(event))).toBe(1);
    expect(calls).toEqual([]);
  });

  test.each([
    ['a command', command('40 oat bars', { team_id: 'T0OTHER' })],
    [
      'an event',
      eventBody(mention('40 oat bars'), { team_id: 'T0OTHER', authorizations: [{ team_id: 'T0OTHER' }] }),
    ],
    ['a press', press('40 oat bars', { team: { id: 'T0OTHER' } })],
  ])('is refused from another workspace: %s', async (_, payload) => {
    const calls = fakeSlack();
    const { receiver } = await wire(smallChat());
    expect(await receiver.send(payload)).toBe(1);
    expect(calls).toEqual([]);
  });
});

describe('what was said once', () => {
  test.each([
    ['an event Slack sends again', eventBody(mention('40 oat bars')), {}],
    ['a command that is replayed', command('40 oat bars'), {}],
    ['a button pressed twice', press('40 oat bars'), { trigger_id: 'another' }],
  ])('is answered once: %s', async (_, payload, again) => {
    const calls = fakeSlack();
    const { receiver } = await wire(smallChat());
    expect(await receiver.send(payload)).toBe(1);
    expect(await receiver.send({ ...payload, ...again })).toBe(1);
    expect(sent(calls)).toHaveLength(1);
  });

  test('an event that arrives under two ids is answered once', async () => {
    const calls = fakeSlack();
    const { receiver } = await wire(smallChat());
    const event = mention('40 oat bars');
    await Promise.all([receiver.send(eventBody(event)), receiver.send(eventBody(event))]);
    expect(sent(calls)).toHaveLength(1);
  });

  test('a button pressed again later is answered again', async () => {
    const calls = fakeSlack();
    const { receiver, clock } = await wire(smallChat());
    await receiver.send(press('40 oat bars'));
    clock.now += 4_000;
    await receiver.send(press('40 oat bars'));
    expect(sent(calls)).toHaveLength(2);
  });
});
