import nock from 'nock';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { command } from './payloads.ts';
import { fakeSlack, sent, wire } from './wire.ts';

beforeEach(() => nock.disableNetConnect());
afterEach(() => {
  nock.cleanAll();
  nock.enableNetConnect();
});

describe('/kitchen', () => {
  test('is acknowledged once and answered to the asker alone', async () => {
    const calls = fakeSlack();
    const { receiver } = await wire();
    expect(await receiver.send(command('help'))).toBe(1);
    const [answer, ...others] = sent(calls);
    expect(others).toEqual([]);
    expect(answer?.method).toBe('respond');
    expect(answer?.body).toMatchObject({ response_type: 'ephemeral', replace_original: false });
    expect(answer?.body.text).toMatch(/\w/);
    expect(answer?.body.blocks).not.toHaveLength(0);
  });

  test('without words answers with help', async () => {
    const calls = fakeSlack();
    const { receiver } = await wire();
    await receiver.send(command(''));
    await receiver.send(command('help'));
    const [bare, help] = sent(calls);
    expect(bare?.body.text).toBe(help?.body.text);
  });

  test('answered twice by Slack, is answered once by us', async () => {
    const calls = fakeSlack();
    const { receiver } = await wire();
    const once = command('help');
    expect(await receiver.send(once)).toBe(1);
    expect(await receiver.send(once)).toBe(1);
    expect(sent(calls)).toHaveLength(1);
  });
});
