import type { Installation as SlackInstallation } from '@slack/oauth';
import { Problem } from '../../chat/problem.ts';
import type { Clock } from '../../kitchen/kitchen.ts';
import type { Installation, Installations } from '../../kitchen/workspaces/workspaces.ts';
import { createExpiringMap } from '../expiring-map.ts';
import { inTime } from '../within.ts';
import type { BotIdentity, ServedWorkspaces } from './served.ts';

/**
 * How long an instance goes on believing what another may have changed; Slack itself refuses a revoked token at once. That a
 * workspace is unknown is believed never: it may be installing at another instance.
 */
const BELIEVED_MS = 30_000;
/** While the memory does not answer, what it said last is believed longer: Slack waits 3 s for an acknowledgement. */
const LAST_KNOWN_MS = 60 * 60_000;
const PATIENCE_MS = 1_000;
const MOST_WORKSPACES = 2_000;

export interface InstalledWorkspaces extends ServedWorkspaces {
  /** Keeps an installation as Slack gave it; only what the bot needs of it. */
  join(installation: SlackInstallation): Promise<void>;
}

/** The workspaces that installed the app, from the memory all instances share. */
export function installedWorkspaces(
  installations: Installations,
  clock: Clock,
  patienceMs = PATIENCE_MS,
): InstalledWorkspaces {
  const believed = createExpiringMap<BotIdentity>(clock, MOST_WORKSPACES);
  const lastKnown = createExpiringMap<BotIdentity>(clock, MOST_WORKSPACES);
  const believe = (identity: BotIdentity): void => {
    believed.set(identity.workspace, identity, BELIEVED_MS);
    lastKnown.set(identity.workspace, identity, LAST_KNOWN_MS);
  };

  /** Throws when the memory fails or takes too long. */
  async function lookUp(workspace: string): Promise<BotIdentity | undefined> {
    const installation = await inTime(installations.get(workspace), patienceMs);
    return installation && identityIn(installation);
  }

  return {
    async identityOf(workspace) {
      const known = believed.get(workspace);
      if (known) return known;
      try {
        const identity = await lookUp(workspace);
        if (identity) believe(identity);
        else lastKnown.forget(workspace);
        return identity;
      } catch (error) {
        const last = lastKnown.get(workspace);
        if (!last) throw error;
        return last;
      }
    },

    all: () => installations.workspaces(),

    async leave(workspace, atMs) {
      const installation = await installations.get(workspace).catch(() => undefined);
      if (installation && installation.installedMs > atMs) return;
      await installations.remove(workspace);
      believed.forget(workspace);
      lastKnown.forget(workspace);
    },

    async join(installation) {
      const workspace = installation.team?.id;
      if (installation.isEnterpriseInstall || !workspace) {
        throw new Problem(
          'not_possible',
          'Batchbell is installed to one workspace at a time, not to a whole organization.',
          'Choose a workspace on the page of Slack and install again.',
        );
      }
      if (!installation.bot) {
        throw new Problem('not_possible', 'Slack gave no bot token.', 'Install again from /slack/install.');
      }
      await installations.put({
        workspace,
        installedBy: installation.user.id,
        installedMs: clock.nowMs(),
        credentials: JSON.stringify(withoutPersonalTokens(installation)),
      });
      believe(identityOf(workspace, installation));
    },
  };
}

/** Nothing acts in a person's name here, so a person's token is not kept. */
function withoutPersonalTokens(installation: SlackInstallation): object {
  const { team, bot, appId, user } = installation;
  return { team, bot, appId, user: { id: user.id }, authVersion: 'v2', isEnterpriseInstall: false };
}

const identityIn = ({ workspace, credentials }: Installation): BotIdentity =>
  identityOf(workspace, JSON.parse(credentials) as SlackInstallation);

function identityOf(workspace: string, { bot, user }: SlackInstallation): BotIdentity {
  return {
    token: bot?.token ?? '',
    botId: bot?.id ?? '',
    botUserId: bot?.userId ?? '',
    workspace,
    installedBy: user.id,
  };
}
