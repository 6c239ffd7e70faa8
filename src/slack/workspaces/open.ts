import { Problem } from '../../chat/problem.ts';
import type { Clock } from '../../kitchen/kitchen.ts';
import type { WorkspaceMemory } from '../../kitchen/workspaces/workspaces.ts';
import { identify } from '../identify.ts';
import type { Log } from '../log.ts';
import type { SlackSettings } from '../settings.ts';
import { installedWorkspaces } from './installed.ts';
import { createInstalling, type Installing } from './installing.ts';
import { oneWorkspace, type ServedWorkspaces } from './served.ts';

export interface OpenParts {
  readonly settings: SlackSettings;
  readonly memory?: WorkspaceMemory;
  readonly clock: Clock;
  readonly log: Log;
  readonly onInstalled: (workspace: string) => void;
}

export interface OpenWorkspaces {
  readonly workspaces: ServedWorkspaces;
  /** Absent where the one workspace's token is in the settings. */
  readonly installing?: Installing;
}

/** The workspaces to serve: the one of the bot token, or those that installed the app. */
export async function openWorkspaces(parts: OpenParts): Promise<OpenWorkspaces> {
  const { settings, memory, clock, log, onInstalled } = parts;
  const { install, botToken, apiUrl } = settings;
  if (botToken !== undefined) return { workspaces: oneWorkspace(await identify(botToken, apiUrl, log)) };
  if (!install || !memory) {
    throw new Problem(
      'bad_option',
      'Neither SLACK_BOT_TOKEN nor SLACK_CLIENT_ID is set.',
      'Set the token of one workspace, or the client id and secret of an app that workspaces install.',
    );
  }
  const { renewed, unreadable } = await memory.installations.renew();
  if (renewed > 0) log.info({ renewed }, 'tokens moved to the newest key');
  if (unreadable.length > 0) {
    log.error({ workspaces: unreadable }, 'no key decrypts the token of these: add it, or install again');
  }
  const workspaces = installedWorkspaces(memory.installations, clock);
  const { begun } = memory;
  const api = apiUrl ? { apiUrl } : {};
  const installing = createInstalling({
    settings: install,
    workspaces,
    begun,
    clock,
    log,
    onInstalled,
    ...api,
  });
  return { workspaces, installing };
}
