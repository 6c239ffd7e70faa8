import { WebClient } from '@slack/web-api';
import type { Messenger } from '../../kitchen/reminders/messenger.ts';
import { clientOptions } from '../client.ts';
import { errorCode } from '../errors.ts';
import { boltLogger, createLog, type Log } from '../log.ts';
import { type ReminderChannels, slackMessenger } from '../messenger.ts';
import type { RoleList } from '../role-list.ts';
import type { BotIdentity, ServedWorkspaces } from './served.ts';

/** The reminders of every workspace served, each sent with its own token to its own channels. */
export interface Reminding {
  /** Starts where a workspace came, stops where one went, and starts anew where the token changed. */
  reconcile(): Promise<void>;
  stopFor(workspace: string): Promise<void>;
  /** Waits for what is being sent. */
  stop(): Promise<void>;
}

export interface RemindingParts {
  readonly workspaces: ServedWorkspaces;
  readonly roleList: RoleList;
  readonly start: (workspace: string, messenger: Messenger) => Promise<{ stop(): Promise<void> }>;
  /** Where reminders go unless staff of the workspace chose a channel; without one, to its staff directly. */
  readonly channels: Partial<ReminderChannels>;
  readonly log: Log;
  readonly apiUrl?: string;
}

interface Running {
  readonly token: string;
  stop(): Promise<void>;
}

/** Other instances install and remove workspaces too. */
const LOOK_EVERY_MS = 60_000;

export function createReminding(parts: RemindingParts): Reminding {
  const { workspaces, log } = parts;
  const running = new Map<string, Running>();
  let isStopped = false;
  let going: Promise<void> = Promise.resolve();

  async function stopFor(workspace: string): Promise<void> {
    const one = running.get(workspace);
    running.delete(workspace);
    await one?.stop();
  }

  async function startFor(identity: BotIdentity): Promise<void> {
    const { workspace, token } = identity;
    if (running.get(workspace)?.token === token) return;
    await stopFor(workspace);
    if (isStopped) return;
    const { stop } = await parts.start(workspace, messengerOf(identity, parts));
    running.set(workspace, { token, stop });
  }

  async function look(): Promise<void> {
    const served = await workspaces.all();
    for (const workspace of [...running.keys()].filter((one) => !served.includes(one))) {
      await stopFor(workspace);
    }
    for (const workspace of served) {
      try {
        const identity = await workspaces.identityOf(workspace);
        await (identity ? startFor(identity) : stopFor(workspace));
      } catch (error) {
        log.error({ workspace, code: errorCode(error) }, 'the reminders of a workspace were not started');
      }
    }
  }

  /** One look at a time; a failed one is made up by the next. */
  const reconcile = (): Promise<void> => {
    going = going
      .then(() => (isStopped ? undefined : look()))
      .catch((error) => log.error({ code: errorCode(error) }, 'workspaces could not be looked up'));
    return going;
  };
  const timer = setInterval(() => void reconcile(), LOOK_EVERY_MS);
  timer.unref();
  return {
    reconcile,
    stopFor,
    async stop() {
      isStopped = true;
      clearInterval(timer);
      await going;
      await Promise.all([...running.keys()].map(stopFor));
    },
  };
}

function messengerOf(identity: BotIdentity, parts: RemindingParts): Messenger {
  const { token: botToken, workspace } = identity;
  const { apiUrl, roleList, channels } = parts;
  const client = new WebClient(botToken, {
    ...clientOptions(apiUrl),
    logger: boltLogger(createLog('silent')),
  });
  return slackMessenger({
    botToken,
    channels,
    staff: () => roleList.staffOf(workspace, client),
    ...(apiUrl ? { apiUrl } : {}),
  });
}
