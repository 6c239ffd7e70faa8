import { z } from 'zod';
import { type Config, type Environment, LOG_LEVELS } from './config.ts';
import { Problem } from './nutrition/problem.ts';
import type { SlackSettings } from './slack/settings.ts';

const PORT_RULE = 'must be a whole number from 0 to 65535';

const listOf = (item: z.ZodType<string, string>) =>
  z
    .string()
    .transform((list) => list.split(/[\s,]+/).filter((id) => id !== ''))
    .pipe(z.array(item));
const memberIds = listOf(
  z.string().regex(/^[UW][A-Z0-9]{2,}$/, 'must be member ids like U012AB3CD, with commas between'),
);
const groupIds = listOf(
  z.string().regex(/^S[A-Z0-9]{2,}$/, 'must be ids of user groups like S012AB3CD, with commas between'),
);
const KEY_RULE = 'must be keys of 32 bytes in base64 (openssl rand -base64 32), the newest first';
const tokenKeys = listOf(z.string().refine((key) => keyOf(key) !== undefined, KEY_RULE))
  .refine((keys) => keys.length > 0, KEY_RULE)
  .transform((keys) => keys.flatMap((key) => keyOf(key) ?? []));

function keyOf(base64: string): Buffer | undefined {
  const key = Buffer.from(base64, 'base64');
  return /^[A-Za-z0-9+/_-]+=*$/.test(base64) && key.length === 32 ? key : undefined;
}

const channelId = z
  .string()
  .regex(/^[CG][A-Z0-9]{2,}$/, "must be a channel id like C012AB3CD, from the channel's details");

const schema = z
  .object({
    SLACK_BOT_TOKEN: z.string().startsWith('xoxb-', 'must start with xoxb-'),
    SLACK_SIGNING_SECRET: z.string(),
    SLACK_APP_TOKEN: z.string().startsWith('xapp-', 'must start with xapp-'),
    SLACK_API_URL: z.url({ protocol: /^https?$/, error: 'must be an http or https address' }),
    SLACK_CLIENT_ID: z.string().regex(/^\d+\.\d+$/, 'must be two numbers with a dot between'),
    SLACK_CLIENT_SECRET: z.string(),
    BATCHBELL_TOKEN_KEYS: tokenKeys,
    SLACK_STAFF: memberIds,
    SLACK_INTERNS: memberIds,
    SLACK_STAFF_GROUPS: groupIds,
    SLACK_INTERN_GROUPS: groupIds,
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
  .superRefine((env, context) => {
    const wrong = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message });
    const needs = (name: keyof typeof env, owner: keyof typeof env) => {
      if (env[owner] && !env[name]) wrong(name, `is needed with ${owner}`);
    };
    if ((env.SLACK_BOT_TOKEN || env.SLACK_CLIENT_ID) && !env.SLACK_SIGNING_SECRET && !env.SLACK_APP_TOKEN) {
      wrong('SLACK_SIGNING_SECRET', 'is needed to serve Slack (or SLACK_APP_TOKEN for Socket Mode)');
    }
    if (env.SLACK_BOT_TOKEN && env.SLACK_CLIENT_ID) {
      wrong(
        'SLACK_CLIENT_ID',
        'is for workspaces that install the app themselves; leave out SLACK_BOT_TOKEN',
      );
    }
    needs('SLACK_CLIENT_SECRET', 'SLACK_CLIENT_ID');
    needs('SLACK_CLIENT_ID', 'SLACK_CLIENT_SECRET');
    needs('BATCHBELL_TOKEN_KEYS', 'SLACK_CLIENT_ID');
    needs('SLACK_KITCHEN_CHANNEL', 'SLACK_DIETITIAN_CHANNEL');
    if (env.SLACK_CLIENT_ID && env.SLACK_KITCHEN_CHANNEL) {
      wrong('SLACK_KITCHEN_CHANNEL', 'is a channel of one workspace; leave it out with SLACK_CLIENT_ID');
    }
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
    ...(env.SLACK_BOT_TOKEN || env.SLACK_CLIENT_ID ? { slack: slackOf(env) } : {}),
    ...(env.PORT === undefined ? {} : { port: env.PORT }),
    ...(env.DATABASE_URL ? { databaseUrl: env.DATABASE_URL } : {}),
    ...(env.LOG_LEVEL ? { logLevel: env.LOG_LEVEL } : {}),
  };
}

function slackOf(env: z.infer<typeof schema>): SlackSettings {
  const { SLACK_CLIENT_ID: clientId, SLACK_CLIENT_SECRET: clientSecret, BATCHBELL_TOKEN_KEYS: keys } = env;
  return {
    ...(env.SLACK_BOT_TOKEN ? { botToken: env.SLACK_BOT_TOKEN } : {}),
    ...(clientId && clientSecret && keys ? { install: { clientId, clientSecret, tokenKeys: keys } } : {}),
    ...(env.SLACK_SIGNING_SECRET ? { signingSecret: env.SLACK_SIGNING_SECRET } : {}),
    ...(env.SLACK_APP_TOKEN ? { appToken: env.SLACK_APP_TOKEN } : {}),
    ...(env.SLACK_STAFF ? { staff: env.SLACK_STAFF } : {}),
    ...(env.SLACK_INTERNS ? { interns: env.SLACK_INTERNS } : {}),
    ...(env.SLACK_STAFF_GROUPS ? { staffGroups: env.SLACK_STAFF_GROUPS } : {}),
    ...(env.SLACK_INTERN_GROUPS ? { internGroups: env.SLACK_INTERN_GROUPS } : {}),
    ...(env.SLACK_KITCHEN_CHANNEL ? { kitchenChannel: env.SLACK_KITCHEN_CHANNEL } : {}),
    ...(env.SLACK_DIETITIAN_CHANNEL ? { dietitianChannel: env.SLACK_DIETITIAN_CHANNEL } : {}),
    ...(env.SLACK_API_URL ? { apiUrl: env.SLACK_API_URL } : {}),
  };
}
