import type { Authorize } from '@slack/bolt';
import type { ServedWorkspaces } from './workspaces/served.ts';

/**
 * Admits the workspaces that installed the app, each with its own token. A payload of any other workspace is refused: it
 * would be answered with a kitchen's figures that is not its own. `teamId` is always the installed workspace, so that a
 * person's own workspace never stands in.
 */
export function authorizeServed(workspaces: ServedWorkspaces): Authorize<boolean> {
  return async ({ teamId }) => {
    const identity = teamId === undefined ? undefined : await workspaces.identityOf(teamId);
    if (!identity) throw new Error('another workspace');
    return {
      botToken: identity.token,
      botId: identity.botId,
      botUserId: identity.botUserId,
      teamId: identity.workspace,
    };
  };
}
