import { describe, expect, test } from 'vitest';
import { readConfig } from '../src/config.ts';

const refusal = async (environment: Record<string, string>): Promise<string> => {
  try {
    await readConfig(environment);
  } catch (error) {
    return String(error instanceof Error ? error.message : error);
  }
  throw new Error('accepted');
};

describe('the environment', () => {
  test('may be empty: the terminal needs nothing', async () => {
    expect(await readConfig({})).toEqual({ port: 3000, logLevel: 'info' });
  });

  test('an empty variable is one that is not set', async () => {
    expect(await readConfig({ SLACK_BOT_TOKEN: '', PORT: '', DATABASE_URL: '' })).toEqual({
      port: 3000,
      logLevel: 'info',
    });
  });

  test('a whole one is read', async () => {
    expect(
      await readConfig({
        SLACK_BOT_TOKEN: 'xoxb-1',
        SLACK_SIGNING_SECRET: 'abc',
        SLACK_APP_TOKEN: 'xapp-1',
        SLACK_API_URL: 'http://127.0.0.1:9/api/',
        PORT: '8080',
        DATABASE_URL: 'postgres://kitchen@127.0.0.1:5432/kitchen',
        LOG_LEVEL: 'warn',
      }),
    ).toEqual({
      slack: {
        botToken: 'xoxb-1',
        signingSecret: 'abc',
        appToken: 'xapp-1',
        apiUrl: 'http://127.0.0.1:9/api/',
      },
      port: 8080,
      databaseUrl: 'postgres://kitchen@127.0.0.1:5432/kitchen',
      logLevel: 'warn',
    });
  });

  test('everything wrong is told at once, by name, without repeating a secret', async () => {
    const message = await refusal({
      SLACK_BOT_TOKEN: 'hunter2',
      SLACK_APP_TOKEN: 'hunter2',
      PORT: '70000',
      DATABASE_URL: 'mysql://hunter2@host/db',
      LOG_LEVEL: 'loud',
    });
    for (const name of ['SLACK_BOT_TOKEN', 'SLACK_APP_TOKEN', 'PORT', 'DATABASE_URL', 'LOG_LEVEL']) {
      expect(message).toContain(name);
    }
    expect(message).not.toContain('hunter2');
  });

  test.each(['eighty', '-1', '1.5', 'NaN', 'Infinity'])('PORT=%s is refused', async (port) => {
    expect(await refusal({ PORT: port })).toContain('PORT must be a whole number from 0 to 65535');
  });

  test('member ids are a list with commas or spaces', async () => {
    const slack = { SLACK_BOT_TOKEN: 'xoxb-1', SLACK_SIGNING_SECRET: 'abc' };
    expect(
      (await readConfig({ ...slack, SLACK_STAFF: 'U012AB3CD, U9X', SLACK_INTERNS: 'W01' })).slack,
    ).toMatchObject({
      staff: ['U012AB3CD', 'U9X'],
      interns: ['W01'],
    });
    expect(await refusal({ ...slack, SLACK_STAFF: '@jo, U1, maria' })).toContain(
      'SLACK_STAFF must be member ids',
    );
  });

  test('a bot token alone does not say how Slack reaches us', async () => {
    expect(await refusal({ SLACK_BOT_TOKEN: 'xoxb-1' })).toContain('SLACK_SIGNING_SECRET');
  });
});
