import type { Chat } from '../chat/chat.ts';
import { Problem } from '../chat/problem.ts';
import type { Clock } from '../kitchen/kitchen.ts';
import type { Messenger } from '../kitchen/reminders/messenger.ts';
import type { WorkspaceMemory } from '../kitchen/workspaces/workspaces.ts';
import { createSlackApp } from './app.ts';
import { authorizeServed } from './authorize.ts';
import { errorCode } from './errors.ts';
import { createGroupMembers } from './group-members.ts';
import { createLog, type Log } from './log.ts';
import { createMetrics } from './metrics.ts';
import type { FrontParts } from './receivers/front.ts';
import { createHttpTransport } from './receivers/http.ts';
import { createSocketModeTransport } from './receivers/socket-mode.ts';
import type { Transport } from './receivers/transport.ts';
import { anyOf, groupRoles, installerRole, listedRoles, type RoleList } from './role-list.ts';
import { createSeen, type Seen } from './seen.ts';
import type { SlackSettings } from './settings.ts';
import { sharedSeen } from './shared-seen.ts';
import { within } from './within.ts';
import { openWorkspaces } from './workspaces/open.ts';
import { createReminding, type Reminding } from './workspaces/reminding.ts';
import type { ServedWorkspaces } from './workspaces/served.ts';

export interface SlackService {
  /** The port that answers HTTP. */
  readonly port: number;
  /** Takes nothing new, finishes what was acknowledged, closes; false when that took too long and something is left. */
  stop(): Promise<boolean>;
  /** How many of what are not finished now. */
  unfinished(): Readonly<Record<string, number>>;
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
  /** What all instances of the service share. Without it one instance serves the one workspace of the bot token. */
  readonly memory?: WorkspaceMemory;
  readonly databaseAnswers?: () => Promise<boolean>;
  /** Starts the reminders of a workspace; `stop` waits for the one being sent. */
  readonly startReminders?: (workspace: string, messenger: Messenger) => Promise<{ stop(): Promise<void> }>;
}

/** What comes after, such as closing the database, has to end within ten seconds of the signal too. */
const LONGEST_STOP_MS = 9_000;

/**
 * Serves one workspace or all that installed the app: over Socket Mode when there is an app token, else over HTTP. Throws a
 * `Problem` that names the variable to change when Slack refuses a token, cannot be reached, or the port is taken.
 * @example const service = await startSlack({ settings, port: 3000, chat, clock, logLevel: 'info' })
 */
export async function startSlack(parts: StartParts): Promise<SlackService> {
  const log = parts.log ?? createLog(parts.logLevel);
  const { settings, chat, clock, memory } = parts;
  requireAWayIn(settings);
  const metrics = createMetrics(clock);
  let reminding: Reminding | undefined;
  const onInstalled = () => void reminding?.reconcile();
  const { workspaces, installing } = await openWorkspaces({
    settings,
    clock,
    log,
    onInstalled,
    ...(memory ? { memory } : {}),
  });
  const { databaseAnswers } = parts;
  const transport = transportOf(parts, {
    metrics,
    log,
    ...(databaseAnswers ? { databaseAnswers } : {}),
    ...(installing ? { installing } : {}),
  });
  const roleList = roleListOf(settings, workspaces, clock, log);
  const { inFlight, board } = await createSlackApp({
    receiver: transport.receiver,
    authorize: authorizeServed(workspaces),
    chat,
    clock,
    log,
    roleList,
    metrics,
    seen: parts.seen ?? (memory ? sharedSeen(memory.claims, clock, log) : createSeen(clock)),
    farewell: { workspaces, stopReminders: async (workspace) => reminding?.stopFor(workspace) },
    ...(settings.apiUrl ? { apiUrl: settings.apiUrl } : {}),
  });
  const port = await transport.start();
  reminding = remindingOf(parts, workspaces, roleList, log);
  await reminding?.reconcile();
  log.info({ port, mode: settings.appToken ? 'socket' : 'http' }, 'serving Slack');
  return {
    port,
    unfinished: inFlight.unfinished,
    async stop() {
      board.rest();
      const finishing = transport.refuse().then(async () => {
        void inFlight.track(stopReminding(reminding, log), 'reminders');
        await inFlight.drain(LONGEST_STOP_MS);
        await transport.stop();
        await inFlight.drain(LONGEST_STOP_MS);
      });
      if (await within(LONGEST_STOP_MS, finishing)) return true;
      log.error({ unfinished: inFlight.unfinished() }, 'stopped with work unfinished');
      return false;
    },
  };
}

async function stopReminding(reminding: Reminding | undefined, log: Log): Promise<void> {
  await reminding
    ?.stop()
    .catch((error: unknown) => log.error({ code: errorCode(error) }, 'reminders did not end well'));
}

function roleListOf(settings: SlackSettings, workspaces: ServedWorkspaces, clock: Clock, log: Log): RoleList {
  const { staff, interns, staffGroups, internGroups, install } = settings;
  if (!staff?.length && !staffGroups?.length && !install) {
    log.warn({}, 'nobody is kitchen staff: set SLACK_STAFF or SLACK_STAFF_GROUPS');
  }
  return anyOf(
    listedRoles(staff, interns),
    installerRole(workspaces),
    groupRoles(createGroupMembers(clock, log), staffGroups, internGroups),
  );
}

function remindingOf(
  { settings, startReminders }: StartParts,
  workspaces: ServedWorkspaces,
  roleList: RoleList,
  log: Log,
): Reminding | undefined {
  if (!startReminders) return undefined;
  const { apiUrl, kitchenChannel, dietitianChannel = kitchenChannel, install } = settings;
  if (kitchenChannel === undefined && !install) {
    log.warn(
      {},
      'SLACK_KITCHEN_CHANNEL is not set: until a channel is chosen, reminders go to staff directly',
    );
  }
  return createReminding({
    workspaces,
    roleList,
    start: startReminders,
    channels: {
      ...(kitchenChannel ? { kitchen: kitchenChannel } : {}),
      ...(dietitianChannel ? { dietitian: dietitianChannel } : {}),
    },
    log,
    ...(apiUrl ? { apiUrl } : {}),
  });
}

function transportOf({ settings, port, host, clock }: StartParts, front: FrontParts): Transport {
  const listening = { port, ...(host ? { host } : {}), ...front };
  const { appToken, signingSecret = '', apiUrl } = settings;
  return appToken
    ? createSocketModeTransport({ appToken, ...(apiUrl ? { apiUrl } : {}), ...listening })
    : createHttpTransport({ signingSecret, clock, ...listening });
}

function requireAWayIn({ appToken, signingSecret }: SlackSettings): void {
  if (appToken || signingSecret) return;
  throw new Problem(
    'bad_option',
    'SLACK_SIGNING_SECRET is not set.',
    'Copy the Signing Secret from "Basic Information" of your app, or set SLACK_APP_TOKEN for Socket Mode.',
  );
}
