import type { Authorize } from '@slack/bolt';

/** Who the bot is in its workspace, from `auth.test`. */
export interface BotIdentity {
  readonly token: string;
  readonly botId: string;
  readonly botUserId: string;
  readonly workspace: string;
}

/**
 * Admits the one workspace the token belongs to. A payload of any other workspace is refused: it would be answered with
 * this kitchen's figures. `teamId` is always the installed workspace, so that a person's own workspace never stands in.
 */
export function authorizeOne(identity: BotIdentity): Authorize<boolean> {
  return async ({ teamId }) => {
    if (teamId !== identity.workspace) throw new Error('another workspace');
    return {
      botToken: identity.token,
      botId: identity.botId,
      botUserId: identity.botUserId,
      teamId: identity.workspace,
    };
  };
}
