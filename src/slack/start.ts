import { WebClient } from '@slack/web-api';
import type { Chat } from '../chat/chat.ts';
import { Problem } from '../chat/problem.ts';
import type { Clock } from '../kitchen/kitchen.ts';
import type { Messenger } from '../kitchen/reminders/messenger.ts';
import { createSlackApp } from './app.ts';
import { authorizeOne, type BotIdentity } from './authorize.ts';
import { clientOptions } from './client.ts';
import { boltLogger, createLog, type Log } from './log.ts';
import { slackMessenger } from './messenger.ts';
import { createHttpTransport } from './receivers/http.ts';
import { createSocketModeTransport } from './receivers/socket-mode.ts';
import type { Transport } from './receivers/transport.ts';
import { listedRoles } from './roles.ts';
import { missingScopes } from './scopes.ts';
import type { Seen } from './seen.ts';
import type { SlackSettings } from './settings.ts';
import { apiProblem } from './start-problems.ts';

export interface SlackService {
  /** The port that answers HTTP. */
  readonly port: number;
  /** Takes nothing new, finishes what was acknowledged (10 s at most), closes. */
  stop(): Promise<void>;
}

export interface StartParts {
  readonly settings: SlackSettings;
  /** 0 takes any free port. */
  readonly port: number;
  readonly host?: string;
  readonly chat: Chat;
  readonly clock: Clock;
  readonly logLevel: string;
  readonly log?: Log;
  readonly seen?: Seen;
  /** Starts the reminders of the workspace; `stop` waits for the one being sent. */
  readonly startReminders?: (workspace: string, messenger: Messenger) => Promise<{ stop(): Promise<void> }>;
}

const LONGEST_STOP_MS = 10_000;

/**
 * Serves a workspace: over Socket Mode when there is an app token, else over HTTP. Throws a `Problem` that names the
 * variable to change when Slack refuses a token, cannot be reached, or the port is taken.
 * @example const service = await startSlack({ settings, port: 3000, chat, clock, logLevel: 'info' })
 */
export async function startSlack(parts: StartParts): Promise<SlackService> {
  const log = parts.log ?? createLog(parts.logLevel);
  const { settings, chat, clock, seen } = parts;
  const transport = transportOf(parts, log);
  const identity = await identify(settings, log);
  const { inFlight, board } = await createSlackApp({
    receiver: transport.receiver,
    authorize: authorizeOne(identity),
    chat,
    clock,
    log,
    roleList: listedRoles(settings.staff, settings.interns),
    ...(settings.apiUrl ? { apiUrl: settings.apiUrl } : {}),
    ...(seen ? { seen } : {}),
  });
  const port = await transport.start();
  const reminders = await remindersOf(parts, identity, log);
  log.info({ port, mode: settings.appToken ? 'socket' : 'http' }, 'serving Slack');
  return {
    port,
    async stop() {
      board.rest();
      await reminders?.stop();
      const finished = transport.stop().then(() => inFlight.drain(LONGEST_STOP_MS));
      if (!(await finished)) log.warn({}, 'stopped with answers unfinished');
    },
  };
}

async function remindersOf({ settings, startReminders }: StartParts, identity: BotIdentity, log: Log) {
  const { botToken, apiUrl, kitchenChannel, dietitianChannel } = settings;
  if (!startReminders) return undefined;
  if (kitchenChannel === undefined) {
    log.warn(
      {},
      'SLACK_KITCHEN_CHANNEL is not set: until a channel is chosen, reminders go to staff directly',
    );
  }
  const dietitian = dietitianChannel ?? kitchenChannel;
  const channels = {
    ...(kitchenChannel ? { kitchen: kitchenChannel } : {}),
    ...(dietitian ? { dietitian } : {}),
  };
  const staff = async () => settings.staff ?? [];
  const messenger = slackMessenger({ botToken, channels, staff, ...(apiUrl ? { apiUrl } : {}) });
  return startReminders(identity.workspace, messenger);
}

function transportOf({ settings, port, host, clock }: StartParts, log: Log): Transport {
  const listening = { port, ...(host ? { host } : {}), log };
  if (settings.appToken) {
    const apiUrl = settings.apiUrl ? { apiUrl: settings.apiUrl } : {};
    return createSocketModeTransport({ appToken: settings.appToken, ...apiUrl, ...listening });
  }
  if (settings.signingSecret) {
    return createHttpTransport({ signingSecret: settings.signingSecret, clock, ...listening });
  }
  throw new Problem(
    'bad_option',
    'SLACK_SIGNING_SECRET is not set.',
    'Copy the Signing Secret from "Basic Information" of your app, or set SLACK_APP_TOKEN for Socket Mode.',
  );
}

async function identify({ botToken, apiUrl }: SlackSettings, log: Log): Promise<BotIdentity> {
  const client = new WebClient(botToken, {
    ...clientOptions(apiUrl),
    logger: boltLogger(createLog('silent')),
  });
  const me = await client.auth.test().catch((error) => {
    throw apiProblem(error, 'SLACK_BOT_TOKEN', apiUrl);
  });
  if (!me.bot_id || !me.user_id || !me.team_id) {
    throw new Problem(
      'bad_option',
      'SLACK_BOT_TOKEN is not the token of a bot.',
      'Use the Bot User OAuth Token (xoxb-…) from "OAuth & Permissions" of your app.',
    );
  }
  const missing = missingScopes(me.response_metadata?.scopes);
  if (missing.length > 0) log.warn({ missing }, 'reinstall the app from the manifest: scopes are missing');
  return { token: botToken, botId: me.bot_id, botUserId: me.user_id, workspace: me.team_id };
}
