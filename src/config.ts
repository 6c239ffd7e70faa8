import type { SlackSettings } from './slack/settings.ts';

export const LOG_LEVELS = ['fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent'] as const;

/** Every variable the program reads. */
export const VARIABLES = [
  'SLACK_BOT_TOKEN',
  'SLACK_SIGNING_SECRET',
  'SLACK_APP_TOKEN',
  'SLACK_CLIENT_ID',
  'SLACK_CLIENT_SECRET',
  'BATCHBELL_TOKEN_KEYS',
  'SLACK_API_URL',
  'SLACK_STAFF',
  'SLACK_INTERNS',
  'SLACK_STAFF_GROUPS',
  'SLACK_INTERN_GROUPS',
  'SLACK_KITCHEN_CHANNEL',
  'SLACK_DIETITIAN_CHANNEL',
  'PORT',
  'DATABASE_URL',
  'LOG_LEVEL',
] as const;

export type Environment = Readonly<Record<string, string | undefined>>;

export interface Config {
  /** Absent: the terminal is the surface. */
  readonly slack?: SlackSettings;
  readonly port: number;
  /** Absent: SQLite in a file. */
  readonly databaseUrl?: string;
  readonly logLevel: (typeof LOG_LEVELS)[number];
}

const DEFAULTS: Config = { port: 3000, logLevel: 'info' };

/**
 * The environment as a `Config`. An empty variable is what a deploy form leaves behind; it means "not set".
 * @throws Problem `bad_option` that lists everything wrong.
 * @example await readConfig({}) // { port: 3000, logLevel: 'info' }
 */
export async function readConfig(environment: Environment): Promise<Config> {
  const given = VARIABLES.filter((name) => environment[name]);
  if (given.length === 0) return DEFAULTS;
  const { checkedConfig } = await import('./config-schema.ts');
  return checkedConfig(Object.fromEntries(given.map((name) => [name, environment[name]])), DEFAULTS);
}
