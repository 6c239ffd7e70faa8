import { z } from 'zod';
import { type Config, type Environment, LOG_LEVELS } from './config.ts';
import { Problem } from './nutrition/problem.ts';
import type { SlackSettings } from './slack/settings.ts';

const PORT_RULE = 'must be a whole number from 0 to 65535';

const memberIds = z
  .string()
  .transform((list) => list.split(/[\s,]+/).filter((id) => id !== ''))
  .pipe(
    z.array(z.string().regex(/^[UW][A-Z0-9]{2,}$/, 'must be member ids like U012AB3CD, with commas between')),
  );

const channelId = z
  .string()
  .regex(/^[CG][A-Z0-9]{2,}$/, "must be a channel id like C012AB3CD, from the channel's details");

const schema = z
  .object({
    SLACK_BOT_TOKEN: z.string().startsWith('xoxb-', 'must start with xoxb-'),
    SLACK_SIGNING_SECRET: z.string(),
    SLACK_APP_TOKEN: z.string().startsWith('xapp-', 'must start with xapp-'),
    SLACK_API_URL: z.url({ protocol: /^https?$/, error: 'must be an http or https address' }),
    SLACK_STAFF: memberIds,
    SLACK_INTERNS: memberIds,
    SLACK_KITCHEN_CHANNEL: channelId,
    SLACK_DIETITIAN_CHANNEL: channelId,
    PORT: z.coerce.number(PORT_RULE).pipe(z.int(PORT_RULE).min(0, PORT_RULE).max(65_535, PORT_RULE)),
    DATABASE_URL: z.url({
      protocol: /^postgres(ql)?$/,
      error: 'must be a postgres:// address; leave it out for SQLite',
    }),
    LOG_LEVEL: z.enum(LOG_LEVELS, `must be one of ${LOG_LEVELS.join(', ')}`),
  })
  .partial()
  .refine((env) => !env.SLACK_BOT_TOKEN || env.SLACK_SIGNING_SECRET || env.SLACK_APP_TOKEN, {
    path: ['SLACK_SIGNING_SECRET'],
    message: 'is needed with SLACK_BOT_TOKEN (or SLACK_APP_TOKEN for Socket Mode)',
  })
  .refine((env) => !env.SLACK_DIETITIAN_CHANNEL || env.SLACK_KITCHEN_CHANNEL, {
    path: ['SLACK_KITCHEN_CHANNEL'],
    message: 'is needed with SLACK_DIETITIAN_CHANNEL',
  });

/**
 * Variables that are set as a `Config`, or one `bad_option` Problem that lists everything wrong with them.
 * Values are never repeated in the message: some of them are secrets.
 */
export function checkedConfig(environment: Environment, defaults: Config): Config {
  const read = schema.safeParse(environment);
  if (!read.success) {
    const lines = new Set(read.error.issues.map((issue) => `  ${String(issue.path[0])} ${issue.message}`));
    throw new Problem(
      'bad_option',
      `The environment is not right:\n${[...lines].join('\n')}`,
      'Set these variables again and restart. README.md lists what each one holds.',
    );
  }
  const env = read.data;
  return {
    ...defaults,
    ...(env.SLACK_BOT_TOKEN ? { slack: slackOf(env.SLACK_BOT_TOKEN, env) } : {}),
    ...(env.PORT === undefined ? {} : { port: env.PORT }),
    ...(env.DATABASE_URL ? { databaseUrl: env.DATABASE_URL } : {}),
    ...(env.LOG_LEVEL ? { logLevel: env.LOG_LEVEL } : {}),
  };
}

function slackOf(botToken: string, env: z.infer<typeof schema>): SlackSettings {
  return {
    botToken,
    ...(env.SLACK_SIGNING_SECRET ? { signingSecret: env.SLACK_SIGNING_SECRET } : {}),
    ...(env.SLACK_APP_TOKEN ? { appToken: env.SLACK_APP_TOKEN } : {}),
    ...(env.SLACK_STAFF ? { staff: env.SLACK_STAFF } : {}),
    ...(env.SLACK_INTERNS ? { interns: env.SLACK_INTERNS } : {}),
    ...(env.SLACK_KITCHEN_CHANNEL ? { kitchenChannel: env.SLACK_KITCHEN_CHANNEL } : {}),
    ...(env.SLACK_DIETITIAN_CHANNEL ? { dietitianChannel: env.SLACK_DIETITIAN_CHANNEL } : {}),
    ...(env.SLACK_API_URL ? { apiUrl: env.SLACK_API_URL } : {}),
  };
}
