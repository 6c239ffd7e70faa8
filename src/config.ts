import { z } from 'zod';
import { Problem } from './nutrition/problem.ts';
import type { SlackSettings } from './slack/settings.ts';

const LOG_LEVELS = ['fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent'] as const;

/** An empty variable is what a deploy form leaves behind; it means "not set". */
const set = (value: unknown): unknown => (value === '' ? undefined : value);
const optional = <T extends z.ZodType>(schema: T) => z.preprocess(set, schema.optional());

const memberIds = z
  .string()
  .transform((list) => list.split(/[\s,]+/).filter((id) => id !== ''))
  .pipe(
    z.array(z.string().regex(/^[UW][A-Z0-9]{2,}$/, 'must be member ids like U012AB3CD, with commas between')),
  );

const Environment = z
  .object({
    SLACK_BOT_TOKEN: optional(z.string().startsWith('xoxb-', 'must start with xoxb-')),
    SLACK_SIGNING_SECRET: optional(z.string().min(1)),
    SLACK_APP_TOKEN: optional(z.string().startsWith('xapp-', 'must start with xapp-')),
    SLACK_API_URL: optional(z.url({ protocol: /^https?$/, error: 'must be an http or https address' })),
    SLACK_STAFF: optional(memberIds),
    SLACK_INTERNS: optional(memberIds),
    PORT: optional(
      z.coerce
        .number('must be a whole number from 0 to 65535')
        .pipe(
          z
            .int('must be a whole number from 0 to 65535')
            .min(0, 'must be a whole number from 0 to 65535')
            .max(65_535, 'must be a whole number from 0 to 65535'),
        ),
    ),
    DATABASE_URL: optional(
      z.url({ protocol: /^postgres(ql)?$/, error: 'must be a postgres:// address; leave it out for SQLite' }),
    ),
    LOG_LEVEL: optional(z.enum(LOG_LEVELS, `must be one of ${LOG_LEVELS.join(', ')}`)),
  })
  .refine((env) => !env.SLACK_BOT_TOKEN || env.SLACK_SIGNING_SECRET || env.SLACK_APP_TOKEN, {
    path: ['SLACK_SIGNING_SECRET'],
    message: 'is needed with SLACK_BOT_TOKEN (or SLACK_APP_TOKEN for Socket Mode)',
  });

export interface Config {
  /** Absent: the terminal is the surface. */
  readonly slack?: SlackSettings;
  readonly port: number;
  /** Absent: SQLite in a file. */
  readonly databaseUrl?: string;
  readonly logLevel: (typeof LOG_LEVELS)[number];
}

/**
 * The environment as a `Config`, or one `bad_option` Problem that lists everything wrong with it.
 * Values are never repeated in the message: some of them are secrets.
 * @example readConfig({}) // { port: 3000, logLevel: 'info' }
 */
export function readConfig(environment: Readonly<Record<string, string | undefined>>): Config {
  const read = Environment.safeParse(environment);
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
    ...(env.SLACK_BOT_TOKEN ? { slack: slackOf(env.SLACK_BOT_TOKEN, env) } : {}),
    port: env.PORT ?? 3000,
    ...(env.DATABASE_URL ? { databaseUrl: env.DATABASE_URL } : {}),
    logLevel: env.LOG_LEVEL ?? 'info',
  };
}

function slackOf(botToken: string, env: z.infer<typeof Environment>): SlackSettings {
  return {
    botToken,
    ...(env.SLACK_SIGNING_SECRET ? { signingSecret: env.SLACK_SIGNING_SECRET } : {}),
    ...(env.SLACK_APP_TOKEN ? { appToken: env.SLACK_APP_TOKEN } : {}),
    ...(env.SLACK_STAFF ? { staff: env.SLACK_STAFF } : {}),
    ...(env.SLACK_INTERNS ? { interns: env.SLACK_INTERNS } : {}),
    ...(env.SLACK_API_URL ? { apiUrl: env.SLACK_API_URL } : {}),
  };
}
